package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.SignedIn;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.KeptTests;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Who may carry tests out, what they sign, and what they have read: at work, and when it is verified. */
class PeopleAtTheBenchTest extends AtTheBench {

    private static final Actor TM = new Actor("TM", Role.TECHNICIAN);
    private static final CompiledProcedure PROCEDURE = new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT);

    private Registrar registrar;

    @BeforeEach
    void enterPeople() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.auditors(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), PROCEDURE.plan(), PROCEDURE.text());
        registrar = ledger.registrar(time.benchTime(), 1_000);
    }

    private Sitting open(String serial, Actor technician) throws Exception {
        workshop.attach(plate());
        return workshop.open(PROCEDURE, new SerialNumber(serial), technician, false);
    }

    private Sitting atTheRelease() throws Exception {
        Sitting sitting = open("C16-004711", QN);
        until(sitting, Demand.Release.class);
        return sitting;
    }

    private void until(Sitting sitting, Class<?> demand) throws Exception {
        GoodTechnician technician = new GoodTechnician(time);
        while (!sitting.run().ended() && !demand.isInstance(sitting.run().demand())) {
            sitting.record(technician.next(sitting));
        }
    }

    private static Fact.Released release(Sitting sitting, String by, Role as) {
        Demand.Release asked = (Demand.Release) sitting.run().demand();
        return new Fact.Released(asked.check(), new Actor(by, as), true);
    }

    private String refused(Executable work) {
        return assertThrows(RefusedException.class, work).getMessage();
    }

    private void sound() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(List.of(), report.signatures());
        assertEquals(List.of(), report.decisions());
        assertTrue(report.sound());
    }

    private void found(String words) throws Exception {
        List<String> reasons = BenchLedger.verify(file()).decisions().stream().map(RecordFault::reason).toList();
        assertTrue(reasons.stream().anyMatch(each -> each.contains(words)), reasons.toString());
    }

    /** The events of a test once more, under another id, with one of them changed; written past every rule of the workshop. */
    private void forge(Sitting like, Class<? extends Fact> kind, Fact instead) throws Exception {
        List<TestEvent> events = new ArrayList<>();
        for (TestEvent event : like.run().events()) {
            boolean changed = kind.isInstance(event.body());
            events.add(changed ? new TestEvent(event.sequence(), event.moment(), event.actor(), instead) : event);
            if (changed) {
                break; // what follows from it would be another thing, and be found for that
            }
        }
        try (Ledger raw = SqliteLedger.open(file())) {
            TestId test = new TestId("T-4K7M2-QXD9R");
            raw.append(test, 0, new KeptTests().drafts(test, events));
        }
    }

    private List<LedgerEntry> entries(Sitting sitting) throws Exception {
        try (Ledger raw = SqliteLedger.openReadOnly(file())) {
            return raw.entries(new TestId(sitting.test()));
        }
    }

    // ---- releases

    @Test
    void whoeverHasAKeyReleasesWithIt() throws Exception {
        Sitting sitting = atTheRelease();
        assertTrue(sitting.signsReleases("KM"));
        assertFalse(sitting.signsReleases("GW"));
        Fact.Released release = release(sitting, "KM", Role.SECOND_PERSON);
        assertEquals("KM has a key, so the release is given or refused with the password to it.", refused(() -> sitting.record(release)));
        sitting.release(release, Approved.by("KM"));
        LedgerEntry entry = entries(sitting).stream().filter(each -> each.kind().equals("released")).findFirst().orElseThrow();
        assertEquals("second person KM", EntrySignature.in(entry).orElseThrow().printedName());
        assertEquals(QN, entry.actor());
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertTrue(sitting.sealed());
        sound();
    }

    @Test
    void aWrongPasswordReleasesNothing() throws Exception {
        Sitting sitting = atTheRelease();
        long before = sitting.run().lastSequence();
        Fact.Released release = release(sitting, "KM", Role.SECOND_PERSON);
        assertTrue(refused(() -> sitting.release(release, new SigningPerson("KM", "wrong".toCharArray()))).contains("KM"));
        assertEquals(before, sitting.run().lastSequence());
        sound();
    }

    @Test
    void nobodyReleasesWhatTheyCarryOutOrAsWhatTheyAreNot() throws Exception {
        Sitting sitting = atTheRelease();
        Fact.Released own = release(sitting, "QN", Role.SECOND_PERSON);
        assertTrue(refused(() -> sitting.release(own, Approved.by("QN"))).contains("QN"));
        Fact.Released grand = release(sitting, "RB", Role.SUPERVISOR);
        assertEquals("RB is not supervisor by the register of people.", refused(() -> sitting.release(grand, Approved.by("RB"))));
        sitting.release(release(sitting, "KM", Role.SUPERVISOR), Approved.by("KM"));
    }

    /** Where the register says who is supervisor, initials that it does not know are none. */
    @Test
    void nobodyReleasesAsASupervisorWhomTheRegisterDoesNotHaveAsOne() throws Exception {
        Sitting sitting = atTheRelease();
        assertEquals("ZZ is not supervisor by the register of people.", refused(() -> sitting.record(release(sitting, "ZZ", Role.SUPERVISOR))));
        registrar.add(Approved.by("LW"), "SV", "supervisor SV", List.of(Role.SUPERVISOR));
        sitting.record(release(sitting, "SV", Role.SUPERVISOR));
        sound();
    }

    @Test
    void aReleaseThatSomebodyWithAKeyHasNotSignedIsFound() throws Exception {
        Sitting sitting = atTheRelease();
        sitting.record(release(sitting, "GW", Role.SECOND_PERSON));
        sound();
        Fact.Released told = (Fact.Released) sitting.run().events().stream().map(TestEvent::body).filter(Fact.Released.class::isInstance).findFirst()
                .orElseThrow();
        forge(sitting, Fact.Released.class, new Fact.Released(told.check(), new Actor("KM", Role.SECOND_PERSON), true));
        found("a release by KM, who had a key");
    }

    // ---- what the technician signs

    @Test
    void theTechnicianSealsWithTheirOwnKey() throws Exception {
        SignedIn who = ledger.signIn(Approved.by("QN"), "4711".toCharArray(), time.benchTime());
        workshop = workshop.signedIn(who);
        Sitting sitting = open("C16-004711", QN);
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertTrue(sitting.owesSignature());
        assertFalse(sitting.sealed());
        assertEquals("The PIN is wrong. 2 more, and the station locks.", refused(() -> sitting.sign("4712".toCharArray())));
        sitting.sign("4711".toCharArray());
        assertTrue(sitting.sealed());
        List<LedgerEntry> entries = entries(sitting);
        LedgerEntry seal = entries.get(entries.size() - 1);
        assertEquals(QN, seal.actor());
        assertEquals("technician QN", EntrySignature.in(seal).orElseThrow().printedName());
        sound();
    }

    @Test
    void threeWrongPinsLockAndTheBenchSeals() throws Exception {
        SignedIn who = ledger.signIn(Approved.by("QN"), "4711".toCharArray(), time.benchTime());
        workshop = workshop.signedIn(who);
        Sitting sitting = open("C16-004711", QN);
        new GoodTechnician(time).carryToTheEnd(sitting);
        refused(() -> sitting.sign("1".toCharArray()));
        refused(() -> sitting.sign("2".toCharArray()));
        assertEquals("The PIN was wrong too often, so the station is locked. QN signs in again with the full password.",
                refused(() -> sitting.sign("3".toCharArray())));
        assertTrue(who.locked());
        assertFalse(sitting.owesSignature());
        sitting.leaveUnsigned();
        assertTrue(sitting.sealed());
        sound();
    }

    @Test
    void whoeverIsSignedInSignsForThemselvesAlone() throws Exception {
        workshop = workshop.signedIn(ledger.signIn(Approved.by("QN"), "4711".toCharArray(), time.benchTime()));
        Sitting sitting = open("C16-004711", TM);
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertTrue(sitting.sealed(), "by the bench");
        sound();
    }

    /** QN has begun it here, TM has taken it up at another station and carried it to its end. */
    @Test
    void whatSomebodyElseCarriedToItsEndElsewhereIsNotSignedHere() throws Exception {
        workshop = workshop.signedIn(ledger.signIn(Approved.by("QN"), "4711".toCharArray(), time.benchTime()));
        Sitting sitting = open("C16-004711", QN);
        try (BenchLedger same = BenchLedger.open(file())) {
            Sitting elsewhere = same.workshop(STATION, time.benchTime()).resume(sitting.test(), TM);
            new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryOnUntil(elsewhere, "drain.residual");
            UnsealedEnd.append(file(), elsewhere, new Observation.Measured("residual", "0.4", Quantity.of("0.4", "V")));
        }
        assertThrows(OvertakenException.class, () -> sitting.record(new Fact.Noted("QN looks in again.")));
        assertTrue(sitting.run().ended());
        assertFalse(sitting.owesSignature());
    }

    @Test
    void aShortPinAndAWrongPasswordDoNotSignIn() {
        assertEquals("A PIN has 4 characters or more.", refused(() -> ledger.signIn(Approved.by("QN"), "471".toCharArray(), time.benchTime())));
        String wrong = refused(() -> ledger.signIn(new SigningPerson("QN", "no".toCharArray()), "4711".toCharArray(), time.benchTime()));
        assertTrue(wrong.contains("not the password of QN"), wrong);
        String unknown = refused(() -> ledger.signIn(Approved.by("TM"), "4711".toCharArray(), time.benchTime()));
        assertTrue(unknown.contains("There is nobody with the id TM"), unknown);
    }

    // ---- authorisation

    private void authorise(String id, int days) throws Exception {
        LocalDate today = LocalDate.ofInstant(time.instant(), ZoneOffset.UTC);
        registrar.authorise(Approved.by("LW"), id, "tarn_c16", "c16_acceptance", today, today.plusDays(days));
    }

    @Test
    void onceSomebodyIsAuthorisedNobodyElseMay() throws Exception {
        open("C16-004711", TM);
        authorise("QN", 10);
        assertEquals("TM is not authorised for c16_acceptance on tarn_c16 today. An administrator can say so; making safe is open to everybody.",
                refused(() -> open("C16-004712", TM)));
        Sitting sitting = open("C16-004712", QN);
        until(sitting, Demand.Release.class);
        assertTrue(refused(() -> sitting.takeOver(TM)).contains("not authorised"));
        sitting.record(new Fact.Noted("TM looked in."), TM);
        sound();
    }

    @Test
    void itHasAFirstAndALastDayAndCanBeEnded() throws Exception {
        authorise("QN", 1);
        open("C16-004711", QN);
        time.advance(Duration.ofDays(1));
        open("C16-004712", QN);
        time.advance(Duration.ofDays(1));
        assertTrue(refused(() -> open("C16-004713", QN)).contains("not authorised"));
        authorise("QN", 5);
        open("C16-004713", QN);
        registrar.endAuthorisation(Approved.by("LW"), "QN", "tarn_c16", "c16_acceptance", "training lapsed");
        assertTrue(refused(() -> open("C16-004714", QN)).contains("not authorised"));
        assertThrows(RefusedException.class, () -> registrar.endAuthorisation(Approved.by("LW"), "QN", "tarn_c16", "c16_acceptance", "again"));
        sound();
    }

    @Test
    void onlyAnAdministratorAuthorises() {
        LocalDate today = LocalDate.ofInstant(time.instant(), ZoneOffset.UTC);
        assertTrue(refused(() -> registrar.authorise(Approved.by("RB"), "RB", "*", "*", today, today)).contains("administrator"));
        assertTrue(refused(() -> registrar.authorise(Approved.by("LW"), "QN", "*", "*", today, today.minusDays(1))).contains("first day"));
        assertTrue(refused(() -> registrar.authorise(Approved.by("LW"), "QN", "no name", "*", today, today)).contains("or * for all"));
    }

    @Test
    void makingSafeStaysOpenToEverybody() throws Exception {
        authorise("QN", 10);
        String test = atTheRelease().test();
        Sitting other = workshop.resume(test, TM);
        assertTrue(refused(() -> other.record(new Fact.PowerAnswered(true))).contains("not authorised"));
        other.record(new Fact.Abandoned("Smoke."));
        new GoodTechnician(time).carryToTheEnd(other);
        assertTrue(other.sealed());
        sound();
    }

    @Test
    void anUnauthorisedTestIsFound() throws Exception {
        Sitting sitting = open("C16-004711", TM);
        authorise("QN", 10);
        forge(sitting, Fact.Marked.class, new Fact.Marked("never"));
        found("TM was not authorised for c16_acceptance on tarn_c16 then");
    }

    // ---- hazards, and who has the test

    @Test
    void aHazardThatWasReadAtOneUnitIsKnownAtTheNext() throws Exception {
        Sitting first = open("C16-004711", QN);
        until(first, Demand.Release.class);
        long read = count(first, Fact.HazardAcknowledged.class);
        Sitting second = open("C16-004712", QN);
        until(second, Demand.Release.class);
        assertEquals(1, count(second, Fact.HazardKnown.class), "the notice about static; the danger is read each time");
        assertEquals(read - 1, count(second, Fact.HazardAcknowledged.class));
        Sitting others = open("C16-004713", TM);
        until(others, Demand.Release.class);
        assertEquals(0, count(others, Fact.HazardKnown.class));
        time.advance(Workshop.SHIFT.plusSeconds(1));
        Sitting later = open("C16-004714", QN);
        until(later, Demand.Release.class);
        assertEquals(0, count(later, Fact.HazardKnown.class));
        sound();
        forge(second, Fact.HazardKnown.class, known(second, "T-2222A-2222A", 5));
        found("it says that QN read hazard static in T-2222A-2222A");
    }

    @Test
    void aReadingThatPointsToAnotherEventIsFound() throws Exception {
        Sitting first = open("C16-004711", QN);
        until(first, Demand.Release.class);
        Sitting second = open("C16-004712", QN);
        until(second, Demand.Release.class);
        forge(second, Fact.HazardKnown.class, known(second, first.test(), 1));
        found("it says that QN read hazard static in " + first.test());
    }

    private static Fact known(Sitting sitting, String test, long event) {
        Fact.HazardKnown right = (Fact.HazardKnown) sitting.run().events().stream().map(TestEvent::body).filter(Fact.HazardKnown.class::isInstance)
                .findFirst().orElseThrow();
        return new Fact.HazardKnown(right.hazard(), test, event, right.instant());
    }

    private static long count(Sitting sitting, Class<? extends Fact> kind) {
        return sitting.run().events().stream().filter(event -> kind.isInstance(event.body())).count();
    }

    @Test
    void aHandOverIsOnRecordWithAndWithoutAnInterruption() throws Exception {
        Sitting sitting = open("C16-004711", QN);
        sitting.takeOver(TM);
        assertEquals(TM, sitting.technician());
        sitting.record(new GoodTechnician(time).next(sitting));
        assertEquals(TM, sitting.run().events().get(sitting.run().events().size() - 1).actor());
        Sitting back = workshop.resume(sitting.test(), QN);
        assertEquals(2, count(back, Fact.TakenOver.class));
        assertEquals(QN, back.run().holder().orElseThrow());
        Sitting again = workshop.resume(sitting.test(), QN);
        assertEquals(2, count(again, Fact.TakenOver.class), "the same person goes on");
        sound();
    }
}
