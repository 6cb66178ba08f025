package org.benchwright.workshop.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.ledger.Ledger;
import org.benchwright.workshop.FaultCode;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** Collects the codes of all fault logs in a ledger, so that the engineer sees which the family's notes don't tell. */
public final class FaultCodes {

    private final Map<List<String>, FaultCode> found = new LinkedHashMap<>();

    private FaultCodes() {
    }

    /** All codes, those that were entered most often first. Records that can't be read are left out: verification tells of them. */
    public static List<FaultCode> of(Ledger ledger) throws StoreException {
        FaultCodes codes = new FaultCodes();
        KeptTests kept = new KeptTests();
        for (TestsOfUnit.Opening opening : new TestsOfUnit(ledger).openings()) {
            if (!opening.opened().rehearsal()) {
                codes.read(kept, ledger, opening);
            }
        }
        return codes.found.values().stream().sorted(Comparator.comparing((FaultCode code) -> -code.tests().size()).thenComparing(FaultCode::code)).toList();
    }

    private void read(KeptTests kept, Ledger ledger, TestsOfUnit.Opening opening) throws StoreException {
        try {
            KeptTest test = kept.read(ledger, opening.test());
            for (TestEvent event : test.run().holding()) {
                if (event.body() instanceof Fact.FaultLogEntered log) {
                    log.lines().forEach(line -> line(line.code(), test, event.moment().instant()));
                }
            }
        } catch (FaultyRecordException faulty) {
            // Verification tells what is wrong with it; it must not hide what the others say.
            return;
        }
    }

    private void line(String code, KeptTest test, Instant instant) {
        UnitFamily family = test.run().plan().family();
        boolean known = family.fault(code).isPresent();
        found.merge(List.of(family.name(), code), new FaultCode(code, family.title(), known, instant, instant, List.of(test.id())), FaultCodes::both);
    }

    private static FaultCode both(FaultCode before, FaultCode now) {
        List<String> tests = new ArrayList<>(before.tests());
        if (!tests.contains(now.tests().get(0))) {
            tests.addAll(now.tests());
        }
        Instant first = now.first().isBefore(before.first()) ? now.first() : before.first();
        boolean later = !now.last().isBefore(before.last());
        return new FaultCode(before.code(), before.family(), later ? now.known() : before.known(), first, later ? now.last() : before.last(), tests);
    }
}
