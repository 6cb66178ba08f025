package org.benchwright.watch;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;

import org.benchwright.core.Ticker;
import org.benchwright.watch.internal.ModbusReader;
import org.benchwright.watch.internal.ModbusWire;
import org.benchwright.watch.internal.OpcUaReader;
import org.benchwright.watch.internal.OpcUaWire;
import org.benchwright.watch.internal.QuietLibraries;
import org.benchwright.watch.internal.SimulatedReader;

/** Opens readers of units. They share a few threads, however many they are. */
public final class WatchSources implements AutoCloseable {

    private final Path certificates;
    private final Ticker ticker;
    private final Clock clock;
    private final ModbusWire modbus;
    private final OpcUaWire opcUa;

    /**
     * @param certificates folder of the bench's own certificate and of those that it trusts
     * @param clock        wall time, by which certificates are valid or not
     * @param ticker       monotonic time
     */
    public WatchSources(Path certificates, Clock clock, Ticker ticker) {
        this.clock = clock;
        this.certificates = certificates;
        this.ticker = ticker;
        QuietLibraries.hush();
        this.modbus = new ModbusWire();
        this.opcUa = new OpcUaWire();
    }

    /**
     * A reader of a unit; it connects when it reads for the first time.
     *
     * @param timeout how long an answer may take
     */
    public PointReader open(Endpoint endpoint, Judge judge, Duration timeout) {
        if (endpoint instanceof Endpoint.Modbus at) {
            return new ModbusReader(modbus, at, judge.points(), timeout);
        }
        if (endpoint instanceof Endpoint.OpcUa at) {
            return new OpcUaReader(opcUa, at, judge.points(), timeout, certificates, clock, ticker);
        }
        return new SimulatedReader((Endpoint.Simulated) endpoint, judge, ticker);
    }

    @Override
    public void close() {
        modbus.close();
        opcUa.close();
    }
}
