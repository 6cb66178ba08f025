package org.benchwright.workshop.internal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Quantity;
import org.benchwright.engine.SoakAttempt;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.record.Decision;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectedTest.Stand;
import org.benchwright.ledger.ProjectedTest.State;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.KeptTest;

/**
 * One kept test as figures count it. One that proves the bench is a test of the bench, whose unit is known to be good: it is no unit's first, and its
 * unit has neither soak, faults nor a life out there; what it measured counts, and so does its review.
 */
final class Projected {

    private final KeptTest kept;
    private final TestRun run;
    private final Map<String, Quantity> readings = new LinkedHashMap<>();
    private final Map<String, String> instruments = new HashMap<>();
    private final Set<ProjectedTest.Cause> causes = new LinkedHashSet<>();
    private String here = "";
    private String step = "";
    private Optional<String> failed = Optional.empty();

    private Projected(KeptTest kept) {
        this.kept = kept;
        this.run = kept.run();
    }

    static ProjectedTest of(KeptTest test) {
        Projected made = new Projected(test);
        test.run().holding().forEach(made::take);
        return made.as(test.id());
    }

    /** One whose record cannot be what happened. */
    static ProjectedTest faulty(TestId test) {
        return new ProjectedTest(test.value(), Instant.EPOCH, "", "", "", "", "", State.FAULTY, false, Optional.empty(), List.of(), List.of(),
                Optional.empty(), Optional.empty());
    }

    private void take(TestEvent event) {
        if (event.body() instanceof Observation.Measured measured) {
            readings.put(check(step, measured.check()), measured.value());
        } else if (event.body() instanceof Observation.InstrumentNamed named) {
            instruments.put(named.instrument(), named.asset());
        } else if (event.body() instanceof Observation.FaultLogEntered log) {
            log.lines().forEach(line -> causes.add(new ProjectedTest.Cause(true, line.code())));
        } else if (event.body() instanceof Derived.NonconformityNoted noted) {
            causes.add(new ProjectedTest.Cause(false, failed.orElseGet(() -> place(noted.stage(), noted.step()))));
        } else {
            failed(event.body());
        }
    }

    /** A test often ends elsewhere than where it failed: after its fault log was read. The place whose check failed last is what counts. */
    private void failed(EventBody body) {
        if (body instanceof Derived.StepOpened opened) {
            here = place(opened.stage(), opened.step());
            step = opened.step();
        } else if (body instanceof Derived.CheckDecided decided && decided.outcome() == Derived.Outcome.DOES_NOT_CONFORM) {
            failed = Optional.of(here);
        } else if (body instanceof Derived.SoakEnded ended && ended.outcome() == Derived.Outcome.DOES_NOT_CONFORM) {
            failed = Optional.of(ended.stage());
        } else if (body instanceof Derived.StepDecided decided && decided.outcome() == Derived.Outcome.CONFORMS) {
            String passed = place(decided.stage(), decided.step());
            failed = failed.filter(place -> !place.equals(passed));
        }
    }

    /** Two steps may call what they measure alike. */
    private static String check(String step, String check) {
        return step + ", " + check;
    }

    private static String place(String stage, String step) {
        return step.isEmpty() ? stage : stage + " / " + step;
    }

    private ProjectedTest as(String id) {
        TestEvent first = run.events().get(0);
        Fact.Opened opening = run.opening();
        boolean ofTheBench = run.plan().provesBenchFor().isPresent();
        return new ProjectedTest(id, millis(first.moment().instant()), opening.family(), opening.procedure(), opening.serial(),
                first.actor().id(), opening.station(), state(), !ofTheBench && opening.predecessor().isEmpty(),
                ofTheBench ? Optional.empty() : soak(), read(), ofTheBench ? List.of() : List.copyOf(causes),
                opening.predecessor(), ofTheBench ? Optional.empty() : field(), deviations(), kept.record().filter(TestRecord::reviewDue).isPresent());
    }

    private List<ProjectedTest.Deviation> deviations() {
        List<Deviation> found = run.rehearsal() ? List.of() : Deviation.of(run);
        return found.stream().map(each -> new ProjectedTest.Deviation(each.sequence(), each.nonconformity(), each.stage(), each.step(),
                millis(each.instant()), each.words(), stand(each), decision(each).map(decision -> new ProjectedTest.Decided(decision.word(),
                        decision.reason(), decision.person(), millis(decision.instant()))))).toList();
    }

    private Optional<Decision> decision(Deviation deviation) {
        return kept.record().flatMap(record -> record.decision(deviation.sequence()));
    }

    private Stand stand(Deviation deviation) {
        if (kept.record().isEmpty()) {
            return Stand.TEST_OPEN;
        } else if (decision(deviation).isPresent()) {
            return Stand.DECIDED;
        }
        return kept.record().get().standing().over() ? Stand.PASSED_OVER : Stand.WAITING;
    }

    /** As exact as the tables are. */
    private static Instant millis(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MILLIS);
    }

    /** Since when the unit is out there; nothing where it never went. */
    private Optional<ProjectedTest.Field> field() {
        return kept.field().filter(field -> field.counts(run) && !isVoid()).map(field -> new ProjectedTest.Field(field.since().toEpochDay(),
                field.returned().map(back -> back.on().toEpochDay()), field.returned().map(back -> back.fault().ordinal()).orElse(-1)));
    }

    /**
     * Between which witnessed times the unit stopped, in the last attempt that began; nothing where nothing was witnessed. A soak that ended
     * undecided tells that the unit worked as long as it was witnessed.
     */
    private Optional<ProjectedTest.Soak> soak() {
        Optional<SoakAttempt> last = SoakAttempt.of(run).stream().filter(SoakAttempt::begun).reduce((before, after) -> after);
        // A unit that restarts by itself tells nothing at looks; what a watch saw of it counts.
        return last.filter(attempt -> run.plan().family().stopStays() || attempt.watching().isPresent()).flatMap(attempt -> {
            long after = attempt.witnessed().toSeconds();
            Optional<Long> by = attempt.stoppedBy().map(stopped -> Math.max(after + 1, stopped.toSeconds()));
            return after > 0 || by.isPresent() ? Optional.of(new ProjectedTest.Soak(after, by)) : Optional.empty();
        });
    }

    private boolean isVoid() {
        return kept.record().filter(record -> record.standing() == Standing.VOID).isPresent();
    }

    private State state() {
        if (run.rehearsal()) {
            return State.REHEARSAL;
        } else if (isVoid()) {
            return State.VOID;
        }
        return run.verdict().map(verdict -> State.valueOf(verdict.name())).orElse(State.OPEN);
    }

    private List<ProjectedTest.Reading> read() {
        Map<String, Action.Measure> measures = measures(run.plan());
        List<ProjectedTest.Reading> read = new ArrayList<>();
        readings.forEach((check, value) -> {
            Action.Measure measure = measures.get(check);
            if (measure != null) {
                String instrument = instruments.getOrDefault(measure.instrument(), measure.instrument());
                read.add(new ProjectedTest.Reading(check, measure.unit().toString(), value.in(measure.unit()), instrument));
            }
        });
        return read;
    }

    private static Map<String, Action.Measure> measures(Plan plan) {
        Map<String, Action.Measure> measures = new HashMap<>();
        plan.steps().forEach(each -> each.actions().stream().filter(Action.Measure.class::isInstance).map(Action.Measure.class::cast)
                .forEach(measure -> measures.put(check(each.name(), measure.id()), measure)));
        return measures;
    }
}
