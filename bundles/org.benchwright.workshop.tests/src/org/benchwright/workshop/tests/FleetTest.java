package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

import org.benchwright.core.Actor;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.FleetFilter;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tests carried out in a real ledger, and what figures count of them. */
class FleetTest {

    private static final CompiledProcedure PROCEDURE = new CompiledProcedure(namedAlike(SamplePlan.acceptance()), SamplePlan.TEXT);
    private static final FleetFilter ALL = new FleetFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();

    /** The plan, with what make safe measures called as what an earlier step measures. */
    private static Plan namedAlike(Plan plan) {
        WorkStage safe = plan.makeSafe();
        List<Step> steps = safe.steps().stream().map(step -> new Step(step.name(), step.instruction(), step.takes(), step.hazards(),
                step.reveals(), step.actions().stream().map(FleetTest::namedAlike).toList())).toList();
        return new Plan(plan.format(), plan.name(), plan.title(), plan.revision(), plan.purpose(), plan.retestOf(), plan.provesBenchFor(),
                plan.family(), plan.claim(), plan.hazards(), plan.protectedItems(), plan.instruments(), plan.preconditions(),
                plan.preconditionUnmet(), plan.stages(), new WorkStage(safe.name(), safe.title(), safe.onDemand(), safe.atMost(),
                        safe.hazards(), steps), plan.end());
    }

    private static Action namedAlike(Action action) {
        return action instanceof Action.Measure m ? new Action.Measure("supply_volts", m.instrument(), m.unit(), m.limits(), m.rule(), m.again(),
                m.rejected(), m.undecided(), m.meanOf(), Optional.empty()) : action;
    }

    private Path file() {
        return folder.resolve("bench.ledger");
    }

    @BeforeEach
    void approve() throws Exception {
        Approved.in(file(), time.benchTime(), PROCEDURE.plan(), PROCEDURE.text());
    }

    /** Carries out a test; the unit is found stopped at the look of this number, 0 for never. */
    private void test(String serial, int stoppedAt, boolean rehearsal) throws Exception {
        test(serial, stoppedAt, false, rehearsal);
    }

    private void test(String serial, int stoppedAt, boolean slip, boolean rehearsal) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file())) {
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            Sitting sitting = workshop.open(PROCEDURE, new SerialNumber(serial), new Actor("QN", Role.TECHNICIAN), rehearsal);
            workshop.attach(Files.write(folder.resolve("plate.jpg"), new byte[] {1}));
            GoodTechnician technician = new GoodTechnician(time);
            int looks = 0;
            while (!sitting.run().ended()) {
                Demand demand = sitting.run().demand();
                Fact fact = technician.next(sitting);
                if (demand instanceof Demand.Look look && !look.begins() && ++looks == stoppedAt) {
                    fact = GoodTechnician.looked(look, Sight.NO);
                }
                sitting.record(fact);
                if (slip && fact instanceof Observation.Looked look && look.answer() == Sight.NO) {
                    sitting.record(new Fact.Struck(sitting.run().strikeable().orElseThrow().sequence()));
                }
            }
        }
    }

    private Fleet fleet() throws Exception {
        return Fleet.of(file(), Progress.none(), Cancellation.never());
    }

    private long derived() throws Exception {
        AtomicLong derived = new AtomicLong();
        AtomicLong announced = new AtomicLong();
        Progress counting = new Progress() {
            @Override
            public void begin(String what, long total) {
                announced.set(total);
            }

            @Override
            public void advance(long steps) {
                derived.addAndGet(steps);
            }

            @Override
            public void end() {
                assertEquals(announced.get(), derived.get(), "as many as were announced");
            }
        };
        Fleet.of(file(), counting, Cancellation.never()).close();
        return derived.get();
    }

    @Test
    void testsAreCountedAsTheirEventsTell() throws Exception {
        test("C16-000001", 0, false);
        test("C16-000002", 2, false);
        try (Fleet fleet = fleet()) {
            assertEquals(List.of(new Fleet.Group("QN", "bench 2", Fleet.State.ACCEPTED, true, 1),
                    new Fleet.Group("QN", "bench 2", Fleet.State.REJECTED, true, 1)), fleet.groups(ALL));
            List<Fleet.Soaks> soaks = fleet.soaks(ALL);
            assertEquals(2, soaks.size());
            Fleet.Soaks stopped = soaks.get(0);
            assertEquals(24, Duration.ofSeconds(stopped.afterSeconds()).toHours());
            assertEquals(48, Duration.ofSeconds(stopped.bySeconds().orElseThrow()).toHours());
            assertEquals(72, Duration.ofSeconds(soaks.get(1).afterSeconds()).toHours());
            assertEquals(Optional.empty(), soaks.get(1).bySeconds());
            // each unit's log as received had a line; what did not conform is the soak, not the step that ended the test
            assertEquals(List.of(new Fleet.Found(false, "endurance", 1), new Fleet.Found(true, "W01", 2)), fleet.found(ALL));
            // Two steps call what they measure alike.
            assertEquals(List.of("bench, supply_volts", "drain, supply_volts"), fleet.measured(ALL).stream().map(Fleet.Measured::name).sorted().toList());
            Fleet.Measured volts = fleet.measured(ALL).stream().filter(each -> each.name().equals("bench, supply_volts")).findFirst().orElseThrow();
            assertEquals(2, volts.count());
            Fleet.Read read = fleet.readings(ALL, volts, 10).get(0);
            assertEquals(24.02, read.value());
            assertEquals("M-17", read.instrument());
            assertEquals("C16-000001", read.serial());
            FleetFilter one = new FleetFilter(Optional.empty(), Optional.of("C16-000002"), Optional.empty(), Optional.empty());
            assertEquals(1, fleet.groups(one).size());
        }
    }

    @Test
    void aLookThatWasASlipIsNoStop() throws Exception {
        test("C16-000001", 2, true, false);
        try (Fleet fleet = fleet()) {
            List<Fleet.Soaks> soaks = fleet.soaks(ALL);
            assertEquals(1, soaks.size());
            assertEquals(72, Duration.ofSeconds(soaks.get(0).afterSeconds()).toHours());
            assertEquals(Optional.empty(), soaks.get(0).bySeconds());
            assertEquals(List.of(new Fleet.Found(true, "W01", 1)), fleet.found(ALL));
        }
    }

    @Test
    void aSecondTestOfAUnitIsNoFirstAndARehearsalCountsNowhere() throws Exception {
        test("C16-000001", 1, false);
        test("C16-000001", 0, false);
        test("C16-000003", 0, true);
        try (Fleet fleet = fleet()) {
            assertEquals(1, fleet.groups(ALL).stream().filter(group -> group.first() && group.state().verdict().isPresent()).count());
            assertEquals(1, fleet.groups(ALL).stream().filter(group -> group.state() == Fleet.State.REHEARSAL).count());
            assertEquals(2, fleet.soaks(ALL).stream().mapToLong(Fleet.Soaks::count).sum());
        }
    }

    @Test
    void onlyWhatIsNewIsDerivedAgain() throws Exception {
        test("C16-000001", 0, false);
        test("C16-000002", 0, false);
        assertEquals(2, derived());
        assertEquals(0, derived());
        test("C16-000003", 0, false);
        assertEquals(1, derived());
        Files.delete(folder.resolve("bench.ledger.figures"));
        assertEquals(3, derived());
    }

    @Test
    void aCacheOfAnotherLedgerIsThrownAway() throws Exception {
        test("C16-000001", 0, false);
        assertEquals(1, derived());
        Path cache = folder.resolve("bench.ledger.figures");
        byte[] kept = Files.readAllBytes(cache);
        for (Path old : List.of(file(), cache)) {
            Files.delete(old);
        }
        approve();
        test("C16-000008", 0, false);
        test("C16-000009", 0, false);
        Files.write(cache, kept);
        assertEquals(2, derived());
        try (Fleet fleet = fleet()) {
            assertEquals(2, fleet.groups(ALL).stream().mapToLong(Fleet.Group::count).sum());
        }
    }

    @Test
    void cancellingAndMissingLedgersAreTold() throws Exception {
        test("C16-000001", 0, false);
        assertThrows(StoreException.class, () -> Fleet.of(file(), Progress.none(), new AfterAFewQuestions()));
        Path missing = folder.resolve("missing.ledger");
        assertThrows(StoreException.class, () -> Fleet.of(missing, Progress.none(), Cancellation.never()));
        assertEquals(1, derived());
    }

    /** Cancels once all events were read. */
    private static final class AfterAFewQuestions implements Cancellation {

        @Override
        public boolean requested() {
            return calledByTheProjector();
        }

        private static boolean calledByTheProjector() {
            return StackWalker.getInstance().walk(frames -> frames.skip(2).findFirst()).map(frame -> frame.getMethodName().equals("update"))
                    .orElse(false);
        }
    }
}
