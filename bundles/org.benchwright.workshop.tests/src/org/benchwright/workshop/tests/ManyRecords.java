package org.benchwright.workshop.tests;

import java.nio.file.Files;
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
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
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

/**
 * A ledger with very many tests to be searched. Every twentieth was carried to its end and sealed, the others were given up at the first
 * measurement and wait for their seal, so that a hundred thousand are made in minutes: two are really carried out, the others are their events once more, with other
 * units, people, instruments and times.
 */
public final class ManyRecords {

    private static final int CARRIED_OUT = 20;
    private static final int PEOPLE = 12;
    private static final int INSTRUMENTS = 40;
    private static final Duration APART = Duration.ofMinutes(7);

    private ManyRecords() {
    }

    /** Makes it, with the procedure of {@link SamplePlan} approved. */
    public static void make(Path file, MovedTime time, int tests) throws Exception {
        CompiledProcedure procedure = new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT);
        Approved.in(file, time.benchTime(), procedure.plan(), procedure.text());
        List<TestEvent> good;
        List<TestEvent> givenUp;
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            workshop.attach(Files.write(file.resolveSibling("plate.jpg"), new byte[] {1}));
            good = carriedOut(workshop, procedure, time, false);
            givenUp = carriedOut(workshop, procedure, time, true);
        }
        Signer bench = BenchKeyStore.openOrCreate(file.getParent());
        SecureRandom random = new SecureRandom();
        KeptTests kept = new KeptTests();
        try (Ledger raw = SqliteLedger.open(file)) {
            for (int i = 2; i < tests; i++) {
                TestId test = TestId.create(random);
                List<TestEvent> events = another(i % CARRIED_OUT == 0 ? good : givenUp, i);
                raw.append(test, 0, kept.drafts(test, events));
                if (i % CARRIED_OUT == 0) {
                    Moment last = events.get(events.size() - 1).moment();
                    raw.seal(test, events.size(), last.instant(), last.sitting(), last.offset().plus(Duration.ofMillis(1)),
                            new Actor("bench", Role.BENCH), bench, "bench 2");
                }
            }
        }
    }

    private static List<TestEvent> carriedOut(Workshop workshop, CompiledProcedure procedure, MovedTime time, boolean giveUp) throws Exception {
        String serial = giveUp ? "C16-000001" : "C16-000000";
        Sitting sitting = workshop.open(procedure, new SerialNumber(serial), new Actor("QN", Role.TECHNICIAN), false);
        GoodTechnician technician = new GoodTechnician(time);
        if (giveUp) {
            while (!(sitting.run().demand() instanceof Demand.TakeMeasurement)) {
                sitting.record(technician.next(sitting));
            }
            sitting.record(new Fact.Abandoned("The connector is bent."));
        }
        technician.carryToTheEnd(sitting);
        return sitting.run().events();
    }

    private static List<TestEvent> another(List<TestEvent> events, int number) {
        List<TestEvent> all = new ArrayList<>(events.size());
        for (TestEvent event : events) {
            Moment then = event.moment();
            Actor by = event.actor().role() == Role.TECHNICIAN ? new Actor("T" + number % PEOPLE, Role.TECHNICIAN) : event.actor();
            all.add(new TestEvent(event.sequence(), new Moment(then.instant().plus(APART.multipliedBy(number)), then.sitting(), then.offset()), by,
                    another(event.body(), number)));
        }
        return all;
    }

    private static EventBody another(EventBody body, int number) {
        if (body instanceof Fact.Opened o) {
            String serial = String.format(Locale.ROOT, "C16-%06d", number);
            return new Fact.Opened(serial, o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(), o.software(), o.rehearsal(),
                    Optional.empty(), o.approval(), o.receipt(), o.mended(), o.books(), o.shift());
        } else if (body instanceof Observation.InstrumentNamed i) {
            // Due long after the last of these tests.
            return new Observation.InstrumentNamed(i.instrument(), "M-" + number % INSTRUMENTS, i.uncertainty(), i.coverage(), i.due()
                    .map(due -> due.plusYears(20)),
                    i.entry());
        }
        return body;
    }
}
