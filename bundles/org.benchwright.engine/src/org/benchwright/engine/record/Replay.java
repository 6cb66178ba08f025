package org.benchwright.engine.record;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.FactGate;
import org.benchwright.engine.internal.Holding;
import org.benchwright.engine.internal.RunState;
import org.benchwright.engine.internal.Transitions;

/**
 * A test told once more with some entries corrected, by the same plan and its rules: what would have been decided then. Where a corrected
 * entry leads another way than the test went, what was entered later answers questions that would not have been asked, and it ends there.
 *
 * @param verdict  what the test would have come to; empty where that can't be told
 * @param followed true if everything that was entered fits
 * @param changes  decisions that would have been others, in order
 * @param beside   departures, nonconformities and ends of soaks that are not on record so, in words
 */
public record Replay(Optional<Verdict> verdict, boolean followed, List<Change> changes, List<String> beside) {

    public Replay {
        changes = List.copyOf(changes);
        beside = List.copyOf(beside);
    }

    /**
     * A decision that would have been another.
     *
     * @param step  the step in which it was made
     * @param check the check
     * @param then  how it was decided; empty where it was not
     * @param now   how it would have been decided
     */
    public record Change(String step, String check, Optional<Derived.CheckDecided> then, Derived.CheckDecided now) {
    }

    /** Which decision: in which visit of which step, about what, and for the how manieth time. */
    private record Place(String stage, String step, int visit, String check, int count) {
    }

    /**
     * Tells a test once more.
     *
     * @param run       a test that has ended
     * @param corrected entries by the numbers of the events in whose place they stand; of the same kind as those
     * @throws RefusedException if a corrected entry could not have been entered
     */
    public static Replay of(TestRun run, Map<Long, Fact> corrected) throws RefusedException {
        Telling telling = new Telling(run, corrected);
        boolean followed = telling.tell();
        List<TestEvent> holding = Holding.of(telling.made);
        Map<Place, Derived.CheckDecided> then = decisions(run.holding());
        List<Change> changes = new ArrayList<>();
        decisions(holding).forEach((place, now) -> {
            Optional<Derived.CheckDecided> before = Optional.ofNullable(then.get(place));
            if (!before.equals(Optional.of(now))) {
                changes.add(new Change(place.step(), place.check(), before, now));
            }
        });
        List<String> beside = noted(holding);
        noted(run.holding()).forEach(beside::remove);
        return new Replay(telling.verdict(holding), followed, changes, beside);
    }

    /** What an auditor decides on or relies on beside single decisions. */
    private static List<String> noted(List<TestEvent> events) {
        List<String> noted = new ArrayList<>();
        for (TestEvent event : events) {
            if (event.body() instanceof Derived.DepartureNoted departure) {
                noted.add(departure.words());
            } else if (event.body() instanceof Derived.NonconformityNoted nonconformity) {
                noted.add(nonconformity.words());
            } else if (event.body() instanceof Derived.SoakEnded soak) {
                noted.add(soak.words());
            }
        }
        return noted;
    }

    private static Map<Place, Derived.CheckDecided> decisions(List<TestEvent> events) {
        Map<Place, Derived.CheckDecided> decisions = new LinkedHashMap<>();
        Map<String, Integer> counts = new HashMap<>();
        Derived.StepOpened at = new Derived.StepOpened("", "", 0);
        for (TestEvent event : events) {
            if (event.body() instanceof Derived.StepOpened opened) {
                at = opened;
                counts.clear();
            } else if (event.body() instanceof Derived.CheckDecided decided) {
                int count = counts.merge(decided.check(), 1, Integer::sum);
                decisions.put(new Place(at.stage(), at.step(), at.visit(), decided.check(), count), decided);
            }
        }
        return decisions;
    }

    /** The telling of one test. */
    private static final class Telling {
        private final TestRun run;
        private final Map<Long, Fact> corrected;
        private final RunState state;
        private final List<TestEvent> made = new ArrayList<>();
        /** Numbers of facts in this telling by their numbers on record. */
        private final Map<Long, Long> numbers = new HashMap<>();

        Telling(TestRun run, Map<Long, Fact> corrected) {
            this.run = run;
            this.corrected = corrected;
            this.state = new RunState(run.plan());
        }

        /** Whether every fact was taken. */
        boolean tell() throws RefusedException {
            for (TestEvent event : run.events()) {
                if (event.body() instanceof Fact fact && !told(event, fact)) {
                    return false;
                }
            }
            return true;
        }

        private boolean told(TestEvent event, Fact onRecord) throws RefusedException {
            Fact fact = Optional.ofNullable(corrected.get(event.sequence())).orElseGet(() -> numbered(onRecord));
            try {
                FactGate.check(state, fact, event.actor(), event.moment());
            } catch (RefusedException refused) {
                if (corrected.containsKey(event.sequence()) && wasTaken(event, onRecord)) {
                    throw refused;
                }
                return false;
            }
            numbers.put(event.sequence(), state.nextSequence());
            add(new TestEvent(state.nextSequence(), event.moment(), event.actor(), fact));
            for (Optional<Derived> next = Transitions.expected(state); next.isPresent(); next = Transitions.expected(state)) {
                add(new TestEvent(state.nextSequence(), event.moment(), event.actor(), next.get()));
            }
            return true;
        }

        /** Whether what is on record would have been taken here: then it is the correction that does not fit. */
        private boolean wasTaken(TestEvent event, Fact onRecord) {
            try {
                FactGate.check(state, numbered(onRecord), event.actor(), event.moment());
                return true;
            } catch (RefusedException elsewhere) {
                return false;
            }
        }

        private Fact numbered(Fact fact) {
            return fact instanceof Fact.Struck struck ? new Fact.Struck(numbers.getOrDefault(struck.sequence(), 0L)) : fact;
        }

        private void add(TestEvent event) {
            Transitions.apply(state, event);
            made.add(event);
        }

        Optional<Verdict> verdict(List<TestEvent> holding) {
            return state.outcome().or(() -> holding.stream().map(TestEvent::body).filter(Derived.ConclusionReached.class::isInstance)
                    .map(body -> ((Derived.ConclusionReached) body).verdict()).reduce((before, after) -> after));
        }
    }
}
