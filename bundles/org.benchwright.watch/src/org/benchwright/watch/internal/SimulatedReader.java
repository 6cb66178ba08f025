package org.benchwright.watch.internal;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;

import org.benchwright.core.Ticker;
import org.benchwright.watch.CannotSeeException;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.Judge;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;

/** No unit at all: reads as a unit would that does what the endpoint says. */
public final class SimulatedReader implements PointReader {

    private final Endpoint.Simulated plan;
    private final Judge judge;
    private final Ticker ticker;
    private final Duration began;

    /**
     * @param plan   what it does, and when
     * @param judge  what its points read while it is as it must be, and while not
     * @param ticker its time
     */
    public SimulatedReader(Endpoint.Simulated plan, Judge judge, Ticker ticker) {
        this.plan = plan;
        this.judge = judge;
        this.ticker = ticker;
        this.began = ticker.elapsed();
    }

    @Override
    public CompletionStage<PointValues> read() {
        Duration age = ticker.elapsed().minus(began);
        boolean silent = plan.silentFrom().filter(from -> age.compareTo(from) >= 0 && age.compareTo(from.plus(plan.silentFor())) < 0).isPresent();
        if (silent) {
            return CompletableFuture.failedFuture(new CannotSeeException(Message.SEE_SIMULATED_SILENCE.text()));
        }
        boolean good = plan.stopsAfter().filter(stop -> age.compareTo(stop) >= 0).isEmpty();
        return CompletableFuture.completedFuture(judge.simulated(good));
    }

    @Override
    public void close() {
        // Nothing was opened.
    }
}
