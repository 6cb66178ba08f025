package org.benchwright.workshop.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.FlashRate;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.KeptTests;

/**
 * One test in which everything happens that tests seldom meet: what is proved beforehand ages, a reading is questioned and repeated, a lamp is
 * tapped along with, a field of readings is filled, somebody else takes over, the clock is set, the power goes, and on soak a watch sees the unit
 * stop.
 */
final class SeldomMet {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);
    private static final Actor WATCH = new Actor("watch", Role.WATCH);
    private static final String SOAK = "endurance";
    private static final WatchFact.Watcher FIRST = new WatchFact.Watcher(1, false);
    private static final WatchFact.Watcher SECOND = new WatchFact.Watcher(2, false);

    private final Path file;
    private final MovedTime time;
    private final Station station;
    private Instant began = Instant.EPOCH;

    SeldomMet(Path file, MovedTime time, Station station) {
        this.file = file;
        this.time = time;
        this.station = station;
    }

    /** Approves the procedure and carries the test out, to its seal. */
    String test() throws Exception {
        CompiledProcedure procedure = new CompiledProcedure(plan(), SamplePlan.TEXT);
        GoodTechnician technician = new GoodTechnician(time);
        String test;
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Approved.approve(ledger, time.benchTime(), procedure.plan(), procedure.text());
            Workshop workshop = ledger.workshop(station, time.benchTime());
            workshop.attach(Files.write(file.resolveSibling("plate.jpg"), new byte[] {3}));
            technician.but("plate.photo", new Observation.Attached("photo", Digest.of(new byte[] {3}), "plate.jpg"));
            Sitting sitting = workshop.open(procedure, new SerialNumber("C16-004714"), QN, false);
            test = sitting.test();
            beforeThePowerGoes(sitting, technician);
        }
        time.advance(Duration.ofMinutes(20));
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Sitting sitting = ledger.workshop(station, time.benchTime()).resume(test, new Actor("TM", Role.TECHNICIAN));
            technician.carryOnUntil(sitting, SOAK + ".begin");
            sitting.record(technician.next(sitting));
            began = sitting.moment().instant();
        }
        onSoak(new TestId(test));
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Sitting sitting = ledger.workshop(station, time.benchTime()).resume(test, new Actor("TM", Role.TECHNICIAN));
            sitting.record(new Fact.PowerAnswered(true));
            technician.carryToTheEnd(sitting);
        }
        return test;
    }

    private void beforeThePowerGoes(Sitting sitting, GoodTechnician technician) throws Exception {
        technician.carryOnUntil(sitting, "plate.damage");
        time.advance(Duration.ofHours(13));
        technician.carryOnUntil(sitting, "bench.supply_volts");
        Fact slipped = new Observation.Measured("supply_volts", "239 V", Quantity.of("239", "V"));
        sitting.record(sitting.run().slipIn(slipped).orElseThrow());
        sitting.record(new Observation.Measured("supply_volts", "24.49 V", Quantity.of("24.49", "V")));
        technician.carryOnUntil(sitting, "fit.strap_off");
        sitting.takeOver(new Actor("TM", Role.TECHNICIAN));
        time.stepWall(Duration.ofMinutes(2));
        technician.carryOnUntil(sitting, "blinks.flt");
        List<Duration> taps = new ArrayList<>();
        for (int tap = 0; tap < 5; tap++) {
            taps.add(Duration.ofMillis(500L * tap));
        }
        sitting.record(new Observation.Tapped("flt", taps));
        technician.carryOnUntil(sitting, "loop.shown");
        sitting.record(technician.next(sitting));
    }

    // ---- the watch

    private WatchFact.Sampled at(Duration offset) {
        return new WatchFact.Sampled(began.plus(offset), offset, Optional.of(began.plus(offset).minusMillis(40)));
    }

    private WatchFact.Sampled at(String offset) {
        return at(Duration.parse(offset));
    }

    private void onSoak(TestId test) throws Exception {
        told(test, "PT10S", new WatchFact.Sees(SOAK, FIRST, "modbus 192.0.2.7:502 unit 1", at("PT10S")));
        told(test, "PT1H", new WatchFact.Held(SOAK, FIRST, at("PT10S"), at("PT1H"), 360, 0,
                List.of(new WatchFact.ConditionRange("ambient", Quantity.of("21.5", "degC"), Quantity.of("22.5", "degC")))));
        told(test, "PT1H10S", new WatchFact.ConditionCrossed(SOAK, FIRST, "ambient", false, Optional.of(at("PT1H")), at("PT1H10S"), Quantity.of("31", "degC")));
        told(test, "PT1H20S", new WatchFact.ConditionCrossed(SOAK, FIRST, "ambient", true, Optional.of(at("PT1H10S")), at("PT1H20S"), Quantity.of("27", "degC")));
        told(test, "PT1H1M", new WatchFact.Silent(SOAK, FIRST, Optional.of(at("PT1H20S")), "connection refused"));
        told(test, "PT2H", new WatchFact.Sees(SOAK, SECOND, "modbus 192.0.2.7:502 unit 1", at("PT2H")));
        told(test, "PT3H", new WatchFact.Held(SOAK, SECOND, at("PT2H"), at("PT3H"), 361, 0, List.of()));
        told(test, "PT3H20S", new WatchFact.Changed(SOAK, SECOND, Optional.of(at("PT3H")), at("PT3H10S"), 2, "not mode run: reads 0"));
    }

    /** As a watch does: the sitting's own clock stays where the sitting left it. */
    private void told(TestId test, String at, Fact fact) throws Exception {
        Instant now = began.plus(Duration.parse(at));
        time.advance(Duration.between(time.instant(), now));
        KeptTests kept = new KeptTests();
        try (Ledger ledger = SqliteLedger.open(file)) {
            TestRun run = kept.read(ledger, test).run();
            Moment last = run.lastMoment();
            List<TestEvent> made = run.record(kept.asKept(fact), WATCH, new Moment(now, last.sitting(), last.offset()));
            ledger.append(test, run.lastSequence(), kept.drafts(test, made));
        }
    }

    // ---- the procedure

    private static Plan plan() {
        Plan p = SamplePlan.acceptance();
        List<Stage> stages = new ArrayList<>(p.stages());
        stages.add(2, new WorkStage("more", "More than usual", false, Optional.empty(), List.of(), List.of(blinks(), loop())));
        return new Plan(p.format(), "c16_seldom_met", p.title(), p.revision(), p.purpose(), p.retestOf(), p.provesBenchFor(), p.family(), p.claim(),
                p.hazards(), p.protectedItems(), p.instruments(), p.preconditions(), p.preconditionUnmet(), stages, p.makeSafe(), p.end());
    }

    private static Step blinks() {
        Signal lamp = new Signal.LampShows("flt", "FLT", Optional.of(LampColour.RED), new LampPattern.Flashing(new FlashRate.Normal()));
        return step("blinks", "Press the lamp test.", new Action.Mark("pressed", "Press as you press it."),
                new Action.Expect("flt", List.of(new Action.AnyOf(List.of(lamp))), new Action.Window("pressed", Duration.ofSeconds(5), Duration.ZERO, true),
                        bad()));
    }

    private static Step loop() {
        return step("loop", "Apply each voltage, and take down what the unit shows.", new Action.Apply("source", Quantity.of("4", "V"), "meter"),
                new Action.Grid("shown", "shown", UnitOfMeasure.of("V"),
                        List.of(new Action.Axis("applied", List.of(volts("4"), volts("12")), Optional.empty())), Duration.ZERO,
                        new Expression.Difference(new Expression.Name("shown"), new Expression.Name("applied")),
                        Limits.between(Quantity.of("-0.1", "V"), Quantity.of("0.1", "V")), DecisionRule.SIMPLE, Optional.empty(), bad(), bad()));
    }

    private static Step step(String name, String instruction, Action... actions) {
        return new Step(name, instruction, Optional.empty(), List.of(), List.of(), List.of(actions));
    }

    private static Action.AxisValue volts(String number) {
        Quantity quantity = Quantity.of(number, "V");
        return new Action.AxisValue(quantity.toString(), Optional.of(quantity));
    }

    private static Move bad() {
        return new Move.Conclude(Verdict.REJECTED, "It does not do what it is made for.");
    }
}
