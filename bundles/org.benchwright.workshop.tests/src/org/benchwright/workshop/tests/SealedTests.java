package org.benchwright.workshop.tests;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.RecordFacts;
import org.benchwright.workshop.internal.SealedRecords;

/** A ledger with people and sealed tests, and somebody who signs in it, with the workshop's rules or past them. */
final class SealedTests {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    private final Path folder;
    private final MovedTime time;
    private final RecordFacts codec = new RecordFacts();
    private byte[] photo = {1};

    SealedTests(Path folder, MovedTime time) throws Exception {
        this.folder = folder;
        this.time = time;
        Approved.in(file(), time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        try (BenchLedger ledger = BenchLedger.open(file())) {
            Approved.auditors(ledger, time.benchTime());
        }
    }

    Path file() {
        return folder.resolve("bench.ledger");
    }

    // ---- tests

    /** Accepted, without a departure. */
    String accepted() throws Exception {
        return test(new GoodTechnician(time), false);
    }

    /** Accepted, with an instrument whose calibration was past due. */
    String departed() throws Exception {
        return test(new GoodTechnician(time).but("instrument.meter", new Observation.InstrumentNamed("meter", "M-17",
                Optional.of(Quantity.of("0.02", "V")),
                BigDecimal.valueOf(2), Optional.of(LocalDate.of(2020, 3, 1)))), false);
    }

    /** Rejected at power-up. */
    String rejected() throws Exception {
        return test(new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")), false);
    }

    String rehearsal() throws Exception {
        return test(new GoodTechnician(time), true);
    }

    private String test(GoodTechnician technician, boolean rehearsal) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            Sitting sitting = open(ledger, rehearsal);
            technician.carryToTheEnd(sitting);
            return sitting.test();
        }
    }

    /** One that is not over. */
    String open() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            return open(ledger, false).test();
        }
    }

    /** One that is over, rejected, and waits for its seal. */
    String ended() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            Sitting sitting = open(ledger, false);
            new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryOnUntil(sitting, "drain.residual");
            UnsealedEnd.append(file(), sitting, new Observation.Measured("residual", "0.4", Quantity.of("0.4", "V")));
            return sitting.test();
        }
    }

    private Sitting open(BenchLedger ledger, boolean rehearsal) throws Exception {
        Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
        workshop.attach(Files.write(folder.resolve("plate.jpg"), photo));
        return workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), QN, rehearsal);
    }

    /** From here on every test that is opened is drawn for a review. */
    void reviewAll() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            ledger.approvals(time.benchTime()).planReviews(2, new BigDecimal("1.0"), "the first month", Approved.by("MJ"));
        }
    }

    /** From here on none is. */
    void endReviews() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            ledger.approvals(time.benchTime()).endReviews("the first month is over", Approved.by("MJ"));
        }
    }

    /** What is attached in the tests that follow. */
    void attaching(byte[] content) {
        photo = content.clone();
    }

    /** Accepted, with that photo. */
    String attached() throws Exception {
        return test(new GoodTechnician(time).but("plate.photo", new Observation.Attached("photo", Digest.of(photo), "plate.jpg")), false);
    }

    // ---- signing

    TestRecord sign(String test, String person, RecordFact fact) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            return ledger.afterSeal(time.benchTime()).sign(test, fact, Approved.by(person));
        }
    }

    TestRecord record(String test) throws Exception {
        try (BenchLedger ledger = BenchLedger.openReadOnly(file())) {
            return ledger.test(test).orElseThrow().record().orElseThrow();
        }
    }

    /** The number of the test's first deviation. */
    long deviation(String test) throws Exception {
        return record(test).deviations().get(0).sequence();
    }

    /** Past the workshop's rules, with the person's own key and all that belongs to it. */
    void forge(String test, String person, Role role, RecordFact fact) throws Exception {
        forge(test, key(person), new Actor(person, role), codec.kind(fact), codec.payload(fact), SealedRecords.meaning(fact));
    }

    void forge(String test, Signer key, Actor actor, String kind, String payload, Meaning meaning) throws Exception {
        forge(test, key, actor, kind, payload, meaning, actor.toString());
    }

    void forge(String test, Signer key, Actor actor, String kind, String payload, Meaning meaning, String printed) throws Exception {
        try (Ledger ledger = SqliteLedger.open(file())) {
            TestId id = new TestId(test);
            Instant now = time.instant();
            ledger.appendSigned(new EntryDraft(id, now, 9, Duration.ZERO, actor, kind, payload), ledger.lastSequence(id),
                    new Signing(key, meaning, printed, benchKey()));
        }
    }

    Signer key(String person) throws Exception {
        return Approved.key(file(), time, person);
    }

    Signer benchKey() throws Exception {
        return BenchKeyStore.openOrCreate(folder);
    }

    LedgerReport report() throws Exception {
        return BenchLedger.verify(file());
    }
}
