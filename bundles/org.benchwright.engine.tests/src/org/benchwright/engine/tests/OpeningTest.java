package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Mended;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.receipt.Plate;
import org.junit.jupiter.api.Test;

/** How a test begins, and what its time may do. */
class OpeningTest {

    private static final Plan PLAN = PlanDraft.plan().stage("a", step("a1", confirm("x"))).build();

    private static String refused(Fact.Opened opening) {
        return assertThrows(RefusedException.class, () -> TestRun.open(PLAN, opening, Walk.TECHNICIAN, Walk.firstMoment())).getMessage();
    }

    private static Fact.Opened opening(String serial, String family, String procedure, int revision) {
        Fact.Opened good = Walk.opening(false);
        return new Fact.Opened(serial, family, procedure, revision, good.text(), good.plan(), good.station(), good.software(), false,
                good.predecessor(), good.approval());
    }

    @Test
    void theSerialNumberFitsTheFamily() {
        assertEquals("Serial number A8-000001 does not fit Tarn C16 modular controller, whose serial numbers look like C16-###### "
                + "(# a digit, @ a letter). Read the type plate again.",
                refused(opening("A8-000001", PlanDraft.FAMILY, PlanDraft.PROCEDURE, PlanDraft.REVISION)));
    }

    private static Fact.Opened received(String serial, Plate plate) {
        Fact.Opened good = Walk.opening(false);
        Arrival arrival = new Arrival(1, 1, Walk.firstMoment().instant(), "O-114", "", plate, "", "", "");
        return new Fact.Opened(serial, good.family(), good.procedure(), good.revision(), good.text(), good.plan(), good.station(), good.software(),
                false, good.predecessor(), good.approval(), Optional.of(arrival), Optional.empty(), Optional.empty(), Optional.empty());
    }

    @Test
    void aUnitWhosePlateTellsNothingIsTestedAsADeparture() throws Exception {
        TestRun tagged = TestRun.fold(PLAN, TestRun.open(PLAN, received("W-31", Plate.UNREADABLE), Walk.TECHNICIAN, Walk.firstMoment()));
        assertEquals(List.of("the type plate can't be read; the unit goes by the tag W-31"), departures(tagged));
        TestRun typed = TestRun.fold(PLAN, TestRun.open(PLAN, received("C16/4711", Plate.AS_TYPED), Walk.TECHNICIAN, Walk.firstMoment()));
        assertEquals(List.of("serial number C16/4711 does not look like C16-######; it was looked at twice and kept as it was typed"), departures(typed));
        TestRun good = TestRun.fold(PLAN, TestRun.open(PLAN, received("C16-004711", Plate.AS_TYPED), Walk.TECHNICIAN, Walk.firstMoment()));
        assertEquals(List.of(), departures(good));
        assertTrue(refused(received("W-31", Plate.READ)).contains("does not fit"));
    }

    private static List<String> departures(TestRun run) {
        return run.events().stream().map(TestEvent::body).filter(Derived.DepartureNoted.class::isInstance)
                .map(body -> ((Derived.DepartureNoted) body).words()).toList();
    }

    @Test
    void aRehearsalNamesNoReceiptAndARepairFollowsATest() {
        Fact.Opened r = received("C16-004711", Plate.READ);
        assertTrue(refused(new Fact.Opened(r.serial(), r.family(), r.procedure(), r.revision(), r.text(), r.plan(), r.station(), r.software(), true,
                r.predecessor(), r.approval(), r.receipt(), Optional.empty(), Optional.empty(), Optional.empty())).contains("names no receipt"));
        assertTrue(refused(new Fact.Opened(r.serial(), r.family(), r.procedure(), r.revision(), r.text(), r.plan(), r.station(), r.software(), false,
                Optional.empty(), r.approval(), r.receipt(), Optional.of(new Mended(List.of())), Optional.empty(), Optional.empty()))
                .contains("between two tests"));
    }

    @Test
    void theOpeningNamesThePlan() {
        assertTrue(refused(opening("C16-004711", PlanDraft.FAMILY, PlanDraft.PROCEDURE, 4)).contains("revision 4"));
        assertTrue(refused(opening("C16-004711", PlanDraft.FAMILY, "other", 3)).contains("other"));
        refused(opening("C16-004711", "tarn_p24", PlanDraft.PROCEDURE, 3));
    }

    @Test
    void aTestBeginsInItsFirstSitting() {
        assertThrows(RefusedException.class, () -> TestRun.open(PLAN, Walk.opening(false), Walk.TECHNICIAN,
                new Moment(Walk.firstMoment().instant(), 2, Duration.ZERO)));
    }

    @Test
    void openingMakesEventsAndIsTheSameEachTime() throws RefusedException {
        List<TestEvent> once = TestRun.open(PLAN, Walk.opening(false), Walk.TECHNICIAN, Walk.firstMoment());
        assertEquals(once, TestRun.open(PLAN, Walk.opening(false), Walk.TECHNICIAN, Walk.firstMoment()));
        assertEquals(List.of(1L, 2L), once.stream().map(TestEvent::sequence).toList());
    }

    @Test
    void aRecordWithoutEventsIsNoTest() {
        assertEquals(1, assertThrows(DoesNotFollowException.class, () -> TestRun.fold(PLAN, List.of())).sequence());
    }

    @Test
    void timeOnlyGoesForwardWithinASitting() {
        Walk walk = Walk.open(PLAN).after("10 s").tell(new Fact.Noted("first"));
        Moment before = new Moment(walk.moment().instant(), 1, Duration.ofSeconds(9));
        assertEquals("This entry is older than the last one. Take the test up again.",
                assertThrows(RefusedException.class, () -> walk.run().record(new Fact.Noted("second"), Walk.TECHNICIAN, before)).getMessage());
    }

    @Test
    void recordingChangesNothing() throws RefusedException {
        Walk walk = Walk.open(PLAN);
        TestRun run = walk.run();
        List<TestEvent> made = run.record(new Observation.Confirmed("x", true), Walk.TECHNICIAN, walk.moment());
        assertEquals(made, run.record(new Observation.Confirmed("x", true), Walk.TECHNICIAN, walk.moment()));
        assertEquals("a1.x", run.demand().key());
        assertEquals(2, run.lastSequence());
    }

    @Test
    void aNoteIsAlwaysTakenAndNeverBlank() {
        Walk walk = Walk.open(PLAN).tell(new Fact.Noted("The fan is loud.")).asks("a1.x");
        assertEquals("Nothing was entered. Enter something.", walk.refusal(new Fact.Noted(" ")));
    }
}
