package org.benchwright.workshop.tests;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.KeptTests;

/** A ledger with many sealed tests in it: one is carried out, the others are its events once more with another serial number. */
public final class FullLedger {

    private FullLedger() {
    }

    /** Makes it, with the procedure approved. */
    public static void make(Path file, MovedTime time, Plan plan, String text, int tests) throws Exception {
        Approved.in(file, time.benchTime(), plan, text);
        Sitting sitting;
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            sitting = workshop.open(new CompiledProcedure(plan, text), new SerialNumber("C16-000000"), new Actor("QN", Role.TECHNICIAN), false);
            Path photo = java.nio.file.Files.write(file.resolveSibling("plate.jpg"), new byte[] {1});
            workshop.attach(photo);
            new GoodTechnician(time).carryToTheEnd(sitting);
        }
        Signer bench = BenchKeyStore.openOrCreate(file.getParent());
        SecureRandom random = new SecureRandom();
        try (Ledger raw = SqliteLedger.open(file)) {
            for (int i = 1; i < tests; i++) {
                TestId test = TestId.create(random);
                List<TestEvent> events = renamed(sitting.run().events(), String.format(Locale.ROOT, "C16-%06d", i));
                raw.append(test, 0, new KeptTests().drafts(test, events));
                Moment last = events.get(events.size() - 1).moment();
                raw.seal(test, events.size(), last.instant(), last.sitting(), last.offset().plus(Duration.ofMillis(1)), new Actor("bench", Role.BENCH), bench,
                        "bench 2");
            }
        }
    }

    private static List<TestEvent> renamed(List<TestEvent> events, String serial) {
        List<TestEvent> all = new ArrayList<>(events);
        Fact.Opened o = (Fact.Opened) events.get(0).body();
        all.set(0, new TestEvent(1, events.get(0).moment(), events.get(0).actor(), new Fact.Opened(serial, o.family(), o.procedure(), o.revision(), o.text(),
                o.plan(), o.station(), o.software(), o.rehearsal(), Optional.empty(), o.approval(), o.receipt(), o.mended(), o.books(), o.shift())));
        return all;
    }
}
