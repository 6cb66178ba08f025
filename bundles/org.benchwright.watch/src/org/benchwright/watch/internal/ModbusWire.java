package org.benchwright.watch.internal;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.IntConsumer;

import org.benchwright.watch.Endpoint;

import com.digitalpetri.modbus.ModbusPduSerializer;
import com.digitalpetri.modbus.ModbusTcpFrame;
import com.digitalpetri.modbus.TimeoutScheduler;
import com.digitalpetri.modbus.client.ModbusClientConfig;
import com.digitalpetri.modbus.client.ModbusTcpClient;
import com.digitalpetri.modbus.pdu.ModbusPdu;
import com.digitalpetri.modbus.tcp.client.NettyClientTransportConfig;
import com.digitalpetri.modbus.tcp.client.NettyTcpClientTransport;

import io.netty.channel.EventLoopGroup;
import io.netty.channel.nio.NioEventLoopGroup;
import io.netty.util.concurrent.DefaultThreadFactory;

/** The threads that all Modbus connections share, and how a connection is set up: for reading, and for nothing else. */
public final class ModbusWire implements AutoCloseable {

    private static final int THREADS = 2;
    /** Read coils, discrete inputs, holding registers, input registers: functions 1 to 4. */
    private static final int LAST_READING_FUNCTION = 4;

    private final EventLoopGroup loops = new NioEventLoopGroup(THREADS, new DefaultThreadFactory("watch-modbus", true));
    private final TimeoutScheduler timeouts = TimeoutScheduler.create(loops, loops);

    /**
     * A client that is not connected yet.
     *
     * @param others hears of answers that another unit gave
     */
    ModbusTcpClient client(Endpoint.Modbus at, String host, Duration timeout, IntConsumer others) {
        NettyClientTransportConfig line = NettyClientTransportConfig.create(config -> config.setHostname(host).setPort(at.port())
                .setConnectTimeout(timeout).setConnectPersistent(false).setReconnectLazy(true).setEventLoopGroup(loops).setExecutor(loops));
        return new ModbusTcpClient(ModbusClientConfig.create(config -> {
            ModbusPduSerializer usual = config.requestSerializer;
            config.setRequestTimeout(timeout).setTimeoutScheduler(timeouts).setRequestSerializer(new ReadingOnly(usual));
        }), new OneUnitOnly(line, at.unit(), others));
    }

    /** An answer that another unit gave, or that is of another protocol, is none: behind a gateway it would be a neighbour's health. */
    private static final class OneUnitOnly extends NettyTcpClientTransport {
        private final int unit;
        private final IntConsumer others;

        OneUnitOnly(NettyClientTransportConfig line, int unit, IntConsumer others) {
            super(line);
            this.unit = unit;
            this.others = others;
        }

        @Override
        public void receive(Consumer<ModbusTcpFrame> answered) {
            super.receive(frame -> {
                if (frame.header().protocolId() != 0) {
                    return;
                }
                if (frame.header().unitId() == unit) {
                    answered.accept(frame);
                } else {
                    others.accept(frame.header().unitId());
                }
            });
        }
    }

    /** Whatever else is asked of the library, no request that could change a unit ever becomes bytes. */
    static final class ReadingOnly implements ModbusPduSerializer {
        private final ModbusPduSerializer usual;

        ReadingOnly(ModbusPduSerializer usual) {
            this.usual = usual;
        }

        @Override
        public void encode(ModbusPdu pdu, ByteBuffer buffer) throws Exception {
            if (pdu.getFunctionCode() < 1 || pdu.getFunctionCode() > LAST_READING_FUNCTION) {
                throw new IllegalStateException("function " + pdu.getFunctionCode() + " does not read");
            }
            usual.encode(pdu, buffer);
        }

        @Override
        public ModbusPdu decode(int functionCode, ByteBuffer buffer) throws Exception {
            return usual.decode(functionCode, buffer);
        }
    }

    @Override
    public void close() {
        loops.shutdownGracefully(200, 2000, TimeUnit.MILLISECONDS);
    }
}
