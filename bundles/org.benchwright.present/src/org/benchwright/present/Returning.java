package org.benchwright.present;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.FieldReturn;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.Message;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.Station;

/** Writing down that a unit came back after it had been handed over. */
public final class Returning {

    private Returning() {
    }

    /**
     * How it came back.
     *
     * @param test      the test by which it was handed over
     * @param on        the day
     * @param complaint what its owner says
     * @param fault     one of {@link #faults()}
     * @param by        initials of who received it
     * @param station   where
     * @param software  name and version of this program
     */
    public record Entry(String test, LocalDate on, String complaint, String fault, String by, String station, String software) {
    }

    /** What can be said about the fault, the usual answer first. */
    public static List<String> faults() {
        return List.of(FieldReturn.Fault.NOT_LOOKED_FOR.word(), FieldReturn.Fault.CONFIRMED.word(), FieldReturn.Fault.NOT_FOUND.word());
    }

    /**
     * Writes it into the record of its test, signed by the bench.
     *
     * @throws EntryRefusedException   if the test does not take it, and why
     * @throws TakenElsewhereException if somebody else wrote to the test in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public static void record(Path ledger, Entry entry, Bench.Clocks clocks)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        FieldReturn back = new FieldReturn(entry.on(), EntryReader.text(entry.complaint()), fault(entry.fault()));
        // None is made for a return: whatever went out is on record somewhere.
        Asked.to(() -> {
            try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                open.workshop(new Station(entry.station(), entry.software()), clocks.time())
                        .returned(entry.test(), back, by(entry.by()));
            }
        });
    }

    private static FieldReturn.Fault fault(String word) throws EntryRefusedException {
        return FieldReturn.Fault.find(word.strip().replace('-', ' ')).orElseThrow(() -> new EntryRefusedException(
                Message.REFUSED_FAULT.text(word, String.join(", ", Arrays.stream(FieldReturn.Fault.values()).map(FieldReturn.Fault::word).toList()))));
    }

    private static Actor by(String initials) throws EntryRefusedException {
        try {
            return new Actor(initials.strip(), Role.TECHNICIAN);
        } catch (IllegalArgumentException e) {
            throw new EntryRefusedException(Message.REFUSED_TECHNICIAN.text(e.getMessage()), e);
        }
    }
}
