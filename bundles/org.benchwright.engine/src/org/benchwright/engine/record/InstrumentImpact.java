package org.benchwright.engine.record;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.core.Quantity;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;

/**
 * What a test would have come to if one of its instruments had not read wrong: every reading that was taken with it is corrected, and the test
 * told once more by its own plan. Readings that it only set, as a source does, are left as they are.
 *
 * @param readings how many readings were corrected
 * @param left     how many readings were taken with it that the error says nothing about
 * @param replay   what the test would have come to; empty where no reading was corrected, or a corrected one can't have been entered
 */
public record InstrumentImpact(int readings, int left, Optional<Replay> replay) {

    /**
     * Which readings to correct.
     *
     * @param asset the instrument's asset number
     * @param error how it reads wrong
     * @param from  since when
     * @param until before when
     */
    public record Wrong(String asset, InstrumentError error, Instant from, Instant until) {
        boolean covers(Instant instant) {
            return !instant.isBefore(from) && instant.isBefore(until);
        }
    }

    /** Asset numbers of all instruments that were named in a test, letter case as entered. */
    public static Set<String> assets(TestRun run) {
        Set<String> assets = new LinkedHashSet<>();
        run.holding().stream().map(TestEvent::body).filter(Observation.InstrumentNamed.class::isInstance)
                .forEach(body -> assets.add(((Observation.InstrumentNamed) body).asset()));
        return assets;
    }

    /**
     * The impact on a test.
     *
     * @param run     a test that has ended
     * @param amended what is right by its amendments, see {@link TestRecord#corrections}
     * @return nothing where the instrument was not used in that time
     */
    public static Optional<InstrumentImpact> of(TestRun run, Map<Long, Fact> amended, Wrong wrong) {
        Reader reader = new Reader(run.plan(), amended, wrong);
        run.holding().forEach(reader::take);
        if (!reader.used) {
            return Optional.empty();
        }
        return Optional.of(new InstrumentImpact(reader.corrected.size(), reader.left, replay(run, amended, reader.corrected)));
    }

    private static Optional<Replay> replay(TestRun run, Map<Long, Fact> amended, Map<Long, Fact> corrected) {
        if (corrected.isEmpty()) {
            return Optional.empty();
        }
        Map<Long, Fact> all = new HashMap<>(amended);
        all.putAll(corrected);
        try {
            return Optional.of(Replay.of(run, all));
        } catch (RefusedException impossible) {
            return Optional.empty();
        }
    }

    /** Follows the events of a test. */
    private static final class Reader {
        private final Plan plan;
        private final Map<Long, Fact> amended;
        private final Wrong wrong;
        private final Map<Long, Fact> corrected = new HashMap<>();
        /** The instruments of the plan as which it was named last. */
        private final Set<String> as = new HashSet<>();
        private String step = "";
        private boolean used;
        private int left;

        Reader(Plan plan, Map<Long, Fact> amended, Wrong wrong) {
            this.plan = plan;
            this.amended = amended;
            this.wrong = wrong;
        }

        void take(TestEvent event) {
            EventBody body = Optional.<EventBody>ofNullable(amended.get(event.sequence())).orElse(event.body());
            if (body instanceof Derived.StepOpened opened) {
                step = opened.step();
            } else if (body instanceof Observation.InstrumentNamed named) {
                named(named);
            } else if (wrong.covers(event.moment().instant())) {
                read(event.sequence(), body);
            }
        }

        private void named(Observation.InstrumentNamed named) {
            if (named.asset().equalsIgnoreCase(wrong.asset())) {
                as.add(named.instrument());
            } else {
                as.remove(named.instrument());
            }
        }

        private void read(long sequence, EventBody body) {
            if (body instanceof Observation.Measured m && readBy(m.check())) {
                correct(sequence, m.value(), right -> new Observation.Measured(m.check(), right.toString(), right));
            } else if (body instanceof Observation.CellRead c && readBy(c.check())) {
                correct(sequence, c.value(), right -> new Observation.CellRead(c.check(), c.cell(), right.toString(), right));
            } else if (body instanceof Observation.PreconditionAnswered a && a.reading().isPresent() && beforehand(a.precondition())) {
                correct(sequence, a.reading().get(), right -> new Observation.PreconditionAnswered(a.precondition(), a.met(), a.text(),
                        Optional.of(right)));
            }
        }

        private boolean readBy(String check) {
            return plan.steps().filter(each -> each.name().equals(step)).flatMap(each -> each.actions().stream())
                    .filter(action -> action.id().equals(check)).anyMatch(action -> action instanceof Action.Measure m && as.contains(m.instrument())
                            || action instanceof Action.Grid g && g.instrument().filter(as::contains).isPresent());
        }

        private boolean beforehand(String precondition) {
            return plan.preconditions().stream().anyMatch(each -> each.name().equals(precondition)
                    && each.instrument().filter(as::contains).isPresent());
        }

        private void correct(long sequence, Quantity read, Function<Quantity, Fact> fact) {
            used = true;
            Optional<Quantity> right = wrong.error().corrected(read);
            if (right.isPresent()) {
                corrected.put(sequence, fact.apply(right.get()));
            } else {
                left++;
            }
        }
    }
}
