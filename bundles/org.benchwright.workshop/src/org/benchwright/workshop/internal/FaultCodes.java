package org.benchwright.workshop.internal;

import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.workshop.FaultCode;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** Collects the codes of all fault logs in a ledger, so that the engineer sees which the family's notes don't tell. */
public final class FaultCodes {

    private static final String FAULT_LOG = TypeNames.events().nameOf(Observation.FaultLogEntered.class);

    private final Map<List<String>, FaultCode> found = new LinkedHashMap<>();

    private FaultCodes() {
    }

    /** All codes, those that were entered most often first. Records that can't be read are left out: verification tells of them. */
    public static List<FaultCode> of(Ledger ledger) throws StoreException {
        FaultCodes codes = new FaultCodes();
        KeptTests kept = KeptTests.remembering();
        for (TestsOfUnit.Opening opening : new TestsOfUnit(ledger).openings()) {
            if (!opening.opened().rehearsal()) {
                codes.read(kept, ledger, opening);
            }
        }
        return codes.found.values().stream().sorted(Comparator.comparing((FaultCode code) -> -code.tests().size()).thenComparing(FaultCode::code)).toList();
    }

    private void read(KeptTests kept, Ledger ledger, TestsOfUnit.Opening opening) throws StoreException {
        List<LedgerEntry> entries = LedgerWork.of(() -> ledger.entries(opening.test()));
        if (entries.stream().noneMatch(entry -> entry.kind().equals(FAULT_LOG))) {
            // Nothing of it would be listed, so it need not be derived.
            return;
        }
        try {
            KeptTest test = kept.derive(ledger, opening.test(), entries);
            for (TestEvent event : test.run().holding()) {
                if (event.body() instanceof Observation.FaultLogEntered log) {
                    log.lines().forEach(line -> line(line, test, event.moment().instant()));
                }
            }
        } catch (FaultyRecordException faulty) {
            // Verification tells what is wrong with it; it must not hide what the others say.
            return;
        }
    }

    private void line(Observation.FaultLine line, KeptTest test, Instant instant) {
        UnitFamily family = test.run().plan().family();
        boolean known = family.fault(line.code()).isPresent();
        found.merge(List.of(family.name(), line.code()), new FaultCode(line.code(), family.name(), family.title(), known, instant, instant, List.of(test.id()),
                line.text().isBlank() ? List.of() : List.of(line.text())), FaultCodes::both);
    }

    private static FaultCode both(FaultCode before, FaultCode now) {
        Instant first = now.first().isBefore(before.first()) ? now.first() : before.first();
        boolean later = !now.last().isBefore(before.last());
        return new FaultCode(before.code(), before.name(), before.family(), later ? now.known() : before.known(), first, later ? now.last() : before.last(),
                each(before.tests(), now.tests()), each(before.beside(), now.beside()));
    }

    private static List<String> each(List<String> before, List<String> now) {
        return Stream.concat(before.stream(), now.stream()).distinct().toList();
    }
}
