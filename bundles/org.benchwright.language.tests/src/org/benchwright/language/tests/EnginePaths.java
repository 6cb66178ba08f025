package org.benchwright.language.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;

/**
 * All paths through a plan, the slow and obvious way: the engine carries the plan out again and again, and every question is
 * answered in
 * every way. Each look at a soak comes when all of it has passed.
 */
final class EnginePaths {

    private static final Actor SECOND = new Actor("AB", Role.SECOND_PERSON);

    private final Plan plan;
    private final int most;
    private final Map<Verdict, Integer> ending = new EnumMap<>(Verdict.class);
    private int paths;

    private EnginePaths(Plan plan, int most) {
        this.plan = plan;
        this.most = most;
    }

    /**
     * How many paths end how.
     *
     * @param most nothing is told of a plan with more
     */
    static Optional<Map<Verdict, Integer>> count(Plan plan, int most) {
        EnginePaths all = new EnginePaths(plan, most);
        try {
            all.go(TestRun.fold(plan, SoundPlans.begin(plan)), 0);
        } catch (RefusedException | DoesNotFollowException refused) {
            throw new AssertionError(refused.getMessage(), refused);
        }
        return all.paths > most ? Optional.empty() : Optional.of(all.ending);
    }

    private static Moment at(int hours) {
        return new Moment(SoundPlans.START.plus(Duration.ofHours(hours)), 1, Duration.ofHours(hours));
    }

    private void go(TestRun run, int hours) throws RefusedException, DoesNotFollowException {
        if (paths > most) {
            return;
        }
        Demand demand = run.demand();
        boolean looks = demand instanceof Demand.Look;
        for (Fact fact : answers(demand)) {
            int later = looks && !((Demand.Look) demand).begins() ? hours + 24 : hours;
            List<TestEvent> made = run.record(fact, SoundPlans.TECHNICIAN, at(later));
            Optional<Verdict> verdict = made.stream().map(TestEvent::body)
                    .filter(Derived.ConclusionReached.class::isInstance)
                    .map(body -> ((Derived.ConclusionReached) body).verdict()).findFirst();
            if (verdict.isPresent()) {
                ending.merge(verdict.get(), 1, Integer::sum);
                paths++;
            } else {
                go(run.with(made), later);
            }
        }
    }

    private static List<Fact> answers(Demand demand) {
        if (demand instanceof Demand.AnswerPrecondition p) {
            return yesAndNo(met -> new Observation.PreconditionAnswered(p.precondition().name(), met, "", Optional.empty()));
        } else if (demand instanceof Demand.ConfirmStatement c) {
            return yesAndNo(yes -> new Observation.Confirmed(c.confirm().id(), yes));
        } else if (demand instanceof Demand.CompareEntries c) {
            return yesAndNo(same -> new Observation.Compared(c.compare().id(), "a", same ? "a" : "b"));
        } else if (demand instanceof Demand.Release r) {
            // Given after a failure, the test goes on as if nothing had failed: that is no path of its own.
            boolean ofFailure = r.statement().startsWith(RandomPlans.AFTER_FAILURE);
            return ofFailure ? List.of(new Fact.Released(r.check(), SECOND, false))
                    : yesAndNo(given -> new Fact.Released(r.check(), SECOND, given));
        } else if (demand instanceof Demand.Look look) {
            List<Fact> seen = new ArrayList<>(List.of(new Observation.Looked(look.soak()
                    .name(), Observation.Sight.YES, "", List.of())));
            if (!look.begins()) {
                seen.add(new Observation.Looked(look.soak().name(), Observation.Sight.NO, "", List.of()));
            }
            return seen;
        }
        throw new AssertionError("not among the random plans: " + demand);
    }

    private static List<Fact> yesAndNo(java.util.function.Function<Boolean, Fact> answer) {
        return List.of(answer.apply(true), answer.apply(false));
    }
}
