package org.benchwright.watch.internal;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

import org.eclipse.milo.opcua.stack.transport.client.tcp.OpcTcpClientTransportConfigBuilder;

import io.netty.channel.EventLoopGroup;
import io.netty.channel.nio.NioEventLoopGroup;
import io.netty.util.HashedWheelTimer;
import io.netty.util.concurrent.DefaultThreadFactory;

/** The threads that all OPC UA connections share. */
public final class OpcUaWire implements AutoCloseable {

    private static final int THREADS = 2;
    private static final int PATIENCE_MS = 5000;

    private final EventLoopGroup loops = new NioEventLoopGroup(THREADS, new DefaultThreadFactory("watch-opcua", true));
    private final ExecutorService executor = Executors.newCachedThreadPool(new DefaultThreadFactory("watch-opcua-work", true));
    private final ScheduledExecutorService scheduled = Executors.newSingleThreadScheduledExecutor(new DefaultThreadFactory("watch-opcua-time", true));
    private final HashedWheelTimer wheel = new HashedWheelTimer(new DefaultThreadFactory("watch-opcua-wheel", true));

    void configure(OpcTcpClientTransportConfigBuilder transport) {
        transport.setEventLoop(loops).setExecutor(executor).setScheduledExecutor(scheduled).setWheelTimer(wheel)
                .setConnectTimeout(uint(PATIENCE_MS)).setAcknowledgeTimeout(uint(PATIENCE_MS));
    }

    ExecutorService executor() {
        return executor;
    }

    @Override
    public void close() {
        loops.shutdownGracefully(200, 2000, TimeUnit.MILLISECONDS);
        executor.shutdownNow();
        scheduled.shutdownNow();
        wheel.stop();
    }
}
