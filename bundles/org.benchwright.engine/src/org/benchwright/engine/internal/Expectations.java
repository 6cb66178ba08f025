package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;

/** Expectations that run together: their tones, their questions, and where they lead. */
final class Expectations {

    /** A tone later than this says nothing about the deadline any more: the check is void. */
    static final Duration LATEST_TONE = Duration.ofSeconds(1);
    /** How often a step may be carried out again because a check in it was void, before the test gives up. */
    static final int VOIDS = 3;

    private Expectations() {
    }

    /** A tone that is still to come. */
    record ToneToCome(Action.Expect expect, Tone tone, Stamp marked, Duration after) {
        Duration due() {
            return marked.age().plus(after);
        }
    }

    /** The expectations that run together with the current action. */
    static List<Action.Expect> group(RunState s) {
        List<Action> actions = s.step().actions();
        return actions.subList(s.actionIndex(), groupEnd(s)).stream().map(Action.Expect.class::cast).toList();
    }

    /** The index behind the current action, or behind the expectations that run together with it. */
    static int groupEnd(RunState s) {
        List<Action> actions = s.step().actions();
        int end = s.actionIndex() + 1;
        while (s.action() instanceof Action.Expect && end < actions.size() && actions.get(end) instanceof Action.Expect) {
            end++;
        }
        return end;
    }

    /** The tones still to come, the earliest first whichever mark it counts from. */
    static List<ToneToCome> tonesToCome(RunState s) {
        return group(s).stream().filter(e -> !s.progress().seen().containsKey(e.id())).flatMap(e -> tonesToCome(s, e))
                .sorted(Comparator.comparing(ToneToCome::due)).toList();
    }

    private static Stream<ToneToCome> tonesToCome(RunState s, Action.Expect e) {
        Stamp marked = s.memory().marks().get(e.window().mark());
        Stream<ToneToCome> first = s.progress().opened().contains(e.id()) ? Stream.empty()
                : Stream.of(new ToneToCome(e, Tone.OPENS, marked, e.window().opens()));
        boolean second = !e.window().lasting().isZero() && !s.progress().closed().contains(e.id());
        return second ? Stream.concat(first, Stream.of(new ToneToCome(e, Tone.CLOSES, marked, e.window().closes()))) : first;
    }

    static Optional<ToneToCome> toneToCome(RunState s, Fact.ToneGiven t) {
        return tonesToCome(s).stream().filter(c -> c.expect().id().equals(t.check()) && c.tone() == t.tone()).findFirst();
    }

    static Demand demand(RunState s) {
        List<ToneToCome> tones = tonesToCome(s);
        if (!tones.isEmpty()) {
            ToneToCome next = tones.get(0);
            return new Demand.AwaitTone(s.place(), next.expect(), next.tone(), next.marked().moment(), next.after());
        }
        Action.Expect open = group(s).stream().filter(e -> !s.progress().seen().containsKey(e.id())).findFirst()
                .orElseThrow(() -> new IllegalStateException("all expectations are answered"));
        return new Demand.AnswerExpectation(s.place(), open);
    }

    /** True if this answers an expectation that runs now and whose last tone has sounded. */
    static boolean asked(RunState s, String check) {
        return group(s).stream().anyMatch(e -> e.id().equals(check)) && !s.progress().seen().containsKey(check)
                && tonesToCome(s).stream().noneMatch(t -> t.expect().id().equals(check));
    }

    // ---- facts

    static void tone(RunState s, Fact.ToneGiven tone) {
        ToneToCome given = toneToCome(s, tone).orElseThrow();
        s.progress(tone.tone() == Tone.OPENS ? s.progress().opened(tone.check()) : s.progress().closed(tone.check()));
        Duration late = s.now().age().minus(given.due());
        boolean markedBefore = given.marked().moment().sitting() != s.lastMoment().sitting();
        if (markedBefore || late.compareTo(LATEST_TONE) > 0) {
            seen(s, new Observation.Seen(tone.check(), Sight.NOT_LOOKING, ""));
        }
    }

    /** Takes down an answer, and decides all expectations that run together once all are answered. */
    static void seen(RunState s, Observation.Seen answer) {
        s.progress(s.progress().answered(answer));
        Map<String, Observation.Seen> answers = s.progress().seen();
        List<Action.Expect> group = group(s);
        if (group.stream().allMatch(e -> answers.containsKey(e.id()))) {
            group.forEach(e -> Checks.decide(s, e.id(), outcome(answers.get(e.id()).answer()), Optional.empty(),
                    words(e, answers.get(e.id()))));
            lead(s);
        }
    }

    /** A failed expectation was released; the others that failed are not. */
    static void released(RunState s, String check) {
        s.progress(s.progress().released(check));
        lead(s);
    }

    /** Where the answers lead: every failure leads where the plan says, the first one first; what nobody saw is seen again. */
    private static void lead(RunState s) {
        Map<String, Observation.Seen> answers = s.progress().seen();
        Optional<Action.Expect> failed = group(s).stream()
                .filter(e -> answers.get(e.id()).answer() == Sight.NO && !s.progress().released().contains(e.id())).findFirst();
        if (failed.isPresent()) {
            Action.Expect e = failed.get();
            Moves.take(s, e.failed(), e.id(), words(e, answers.get(e.id())), Outcome.DOES_NOT_CONFORM);
        } else if (answers.values().stream().anyMatch(a -> a.answer() == Sight.NOT_LOOKING)) {
            repeatStep(s, Words.of("because.unseen"));
        } else {
            Steps.next(s);
        }
    }

    private static Outcome outcome(Sight answer) {
        return switch (answer) {
            case YES -> Outcome.CONFORMS;
            case NO -> Outcome.DOES_NOT_CONFORM;
            case NOT_LOOKING -> Outcome.UNDECIDED;
        };
    }

    private static String words(Action.Expect e, Observation.Seen answer) {
        String expected = SignalWords.of(e.sequence()) + " " + SignalWords.of(e.window());
        return switch (answer.answer()) {
            case YES -> Words.of("expect.yes", expected);
            case NO -> answer.asSeen().isBlank() ? Words.of("expect.no", expected) : Words.of("expect.noSeen", expected, answer.asSeen());
            case NOT_LOOKING -> Words.of("expect.void", expected);
        };
    }

    /**
     * The step is carried out once more because a check in it is void; that is a departure, and bounded. Where the step has switched off
     * what it began with, beginning it again would prove nothing: then power-up comes again. Making safe only ever goes on.
     */
    static void repeatStep(RunState s, String because) {
        String counted = s.stage().name() + "." + s.stepName() + " void";
        int taken = s.memory().timesTaken(counted);
        if (taken >= VOIDS) {
            String words = Words.of("because.voidTooOften", s.stepName(), VOIDS);
            Moves.take(s, new Move.Conclude(Verdict.UNDECIDED, words), "", words, Outcome.UNDECIDED);
            return;
        }
        s.memory().count(counted);
        s.following().add(new Derived.DepartureNoted(DepartureKind.REPEATED, Words.of("departure.repeated", s.stepName(), because)));
        if (s.makingSafe() || s.startsAsBefore()) {
            s.following().add(new Derived.Repeated(s.stage().name(), s.stepName(), "", because, taken + 1));
        } else {
            s.switchOff(s.live().isEmpty() ? SwitchOff.NOTHING : SwitchOff.BEFORE_POWER_UP);
            Moves.moveTo(s, s.coldSpot(), "", Words.of("because.switchedOff", because), Outcome.UNDECIDED);
        }
    }
}
