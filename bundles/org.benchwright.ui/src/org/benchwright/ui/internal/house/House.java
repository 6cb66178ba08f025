package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import org.benchwright.language.FamilyPlates;
import org.benchwright.language.LanguageServices;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Receiving;
import org.benchwright.present.TakenElsewhereException;

/** The units in the house, for this window. All reading and writing is done by a thread of its own; any thread may call. */
public final class House implements AutoCloseable {

    private final Path ledger;
    private final Optional<Path> procedures;
    private final String station;
    private final String software;
    private final ExecutorService worker = Executors.newSingleThreadExecutor(task -> new Thread(task, "units in the house"));
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private Optional<Receiving> receiving = Optional.empty();

    /**
     * @param ledger     the ledger's file
     * @param procedures the folder whose families' serial numbers are known
     * @param station    the bench's name
     * @param software   name and version of this program
     */
    public House(Path ledger, Optional<Path> procedures, String station, String software) {
        this.ledger = ledger;
        this.procedures = procedures;
        this.station = station;
        this.software = software;
    }

    /** Something that is done with the units. */
    @FunctionalInterface
    public interface Work<T> {
        /** Does it. */
        T with(Receiving receiving) throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /** Looks something up. */
    public <T> CompletableFuture<T> ask(Work<T> work) {
        return CompletableFuture.supplyAsync(() -> {
            try {
                return work.with(receiving());
            } catch (EntryRefusedException | TakenElsewhereException | CannotStoreException failure) {
                throw new CompletionException(failure);
            }
        }, worker);
    }

    /** Enters something; whoever listens is told afterwards. */
    public <T> CompletableFuture<T> enter(Work<T> work) {
        return ask(work).whenComplete((done, failure) -> listeners.forEach(Runnable::run));
    }

    /** Confined to the worker. */
    private Receiving receiving() {
        if (receiving.isEmpty()) {
            receiving = Optional.of(new Receiving(ledger, station, software, Bench.Clocks.system(),
                    procedures.map(folder -> FamilyPlates.of(LanguageServices.create(), folder)).orElse(List.of())));
        }
        return receiving.get();
    }

    /** The families' files may have changed: they are read again for what comes next. */
    public void forget() {
        worker.execute(() -> receiving = Optional.empty());
    }

    /** Tells when something was entered here, on any thread. */
    public void add(Runnable listener) {
        listeners.add(listener);
    }

    /** Tells no more. */
    public void remove(Runnable listener) {
        listeners.remove(listener);
    }

    @Override
    public void close() {
        listeners.clear();
        worker.shutdown();
    }
}
