package org.benchwright.watch.internal;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
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

    /** Clients that have been told to go, and wait for the answer of their server. */
    private final Set<CompletableFuture<?>> leaving = ConcurrentHashMap.newKeySet();

    void configure(OpcTcpClientTransportConfigBuilder transport) {
        transport.setEventLoop(loops).setExecutor(executor).setScheduledExecutor(scheduled).setWheelTimer(wheel)
                .setConnectTimeout(uint(PATIENCE_MS)).setAcknowledgeTimeout(uint(PATIENCE_MS));
    }

    ExecutorService executor() {
        return executor;
    }

    /** Ends a client's session and its connection; when this returns it may still be under way. */
    void leave(OpcUaClient client) {
        CompletableFuture<?> left = client.disconnectAsync().toCompletableFuture();
        leaving.add(left);
        left.whenComplete((nothing, failure) -> leaving.remove(left));
    }

    /**
     * Waits, not for ever, until the servers know that their sessions are over. Then the loops close what is open still. They hand to the
     * other threads what follows from that, so these end last.
     */
    @Override
    public void close() {
        CompletableFuture.allOf(leaving.toArray(CompletableFuture[]::new)).handle((nothing, failure) -> true)
                .completeOnTimeout(false, PATIENCE_MS, TimeUnit.MILLISECONDS).join();
        loops.shutdownGracefully(0, PATIENCE_MS, TimeUnit.MILLISECONDS).awaitUninterruptibly(PATIENCE_MS);
        executor.shutdown();
        scheduled.shutdownNow();
        wheel.stop();
    }
}
