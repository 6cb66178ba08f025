package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.core.Limits;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.internal.SoakWatch.Crossing;
import org.benchwright.engine.plan.SoakStage;

/**
 * A soak observed by a watch. The time during which it saw the unit as it must be is evidence, whether or not a stop stays; silence is
 * not, whatever comes after it. Only a person's look bridges it, and only where a stop stays.
 */
final class WatchRules {

    private WatchRules() {
    }

    static void told(RunState s, WatchFact fact) {
        SoakStage soak = s.atSoak().orElseThrow();
        Optional<Derived> missed = missed(s, soak, fact);
        follow(s, soak, fact);
        if (ended(s) || missed(s, soak, fact).isEmpty()) {
            missed.ifPresent(s.following()::addFirst);
        }
    }

    /**
     * A look that was late already when the watch saw the unit again, or saw the last of it. As long as it is due somebody may come yet, and then it is a late
     * one.
     */
    private static Optional<Derived> missed(RunState s, SoakStage soak, WatchFact fact) {
        boolean standsIn = soak.watch().flatMap(SoakStage.Watch::instead).isPresent();
        return firstSample(fact).flatMap(first -> SoakRules.missed(s, soak, standsIn ? ageOf(s, first) : s.now().age()));
    }

    /** The first sample that a watch tells of; empty where it tells none of the unit. */
    private static Optional<WatchFact.Sampled> firstSample(WatchFact fact) {
        if (fact instanceof WatchFact.Held held) {
            return Optional.of(held.from());
        } else if (fact instanceof WatchFact.Changed changed) {
            return changed.lastGood().or(() -> Optional.of(changed.firstBad()));
        }
        return fact instanceof WatchFact.Sees sees ? Optional.of(sees.at()) : Optional.empty();
    }

    private static boolean ended(RunState s) {
        return s.following().stream().anyMatch(Derived.SoakEnded.class::isInstance);
    }

    private static void follow(RunState s, SoakStage soak, WatchFact fact) {
        if (fact instanceof WatchFact.Sees f) {
            sees(s, soak, f);
        } else if (fact instanceof WatchFact.Held f) {
            held(s, soak, f);
        } else if (fact instanceof WatchFact.Changed f) {
            changed(s, soak, f);
        } else if (fact instanceof WatchFact.ConditionCrossed f) {
            condition(s, soak, f);
        } else if (fact instanceof WatchFact.Silent f) {
            SoakWatch now = s.watch().begun(f.by());
            s.watch(f.lastSeen().map(last -> now.at(f.by(), false, last)).orElse(now));
        }
    }

    private static void sees(RunState s, SoakStage soak, WatchFact.Sees f) {
        s.watch(s.watch().at(f.by(), true, f.at()));
        Duration unseen = ageOf(s, f.at()).minus(s.soak().lastSeen());
        Optional<SoakStage.Gap> gap = soak.gap().filter(g -> !s.plan().family().stopStays() && unseen.compareTo(g.atMost()) > 0);
        if (gap.isPresent()) {
            SoakRules.endUndecided(s, soak, gap.get().instead(), "watch",
                    Words.of("soak.unseen", Durations.words(unseen), Durations.words(gap.get().atMost())));
        } else {
            s.soak(s.soak().seen(ageOf(s, f.at())));
        }
    }

    private static void held(RunState s, SoakStage soak, WatchFact.Held f) {
        s.watch(s.watch().at(f.by(), true, f.to()));
        SoakProgress now = s.soak().held(f.to().offset().minus(f.from().offset()), ageOf(s, f.to()));
        s.soak(now);
        if (now.witnessed().compareTo(soak.lasting()) >= 0) {
            s.following().add(new Derived.SoakEnded(soak.name(), Outcome.CONFORMS, now.witnessed(), SoakRules.proved(now.witnessed())));
        } else {
            Duration sinceLook = s.since(now.lastGood().orElseThrow());
            s.following().add(new Derived.SoakWitnessed(soak.name(), now.witnessed(), now.due(soak).minus(sinceLook)));
        }
    }

    private static void changed(RunState s, SoakStage soak, WatchFact.Changed f) {
        s.watch(s.watch().at(f.by(), f.lastGood().isPresent(), f.firstBad()));
        f.lastGood().ifPresent(last -> s.soak(s.soak().seen(ageOf(s, last))));
        if (f.bad() < soak.watch().orElseThrow().stopAfterBad()) {
            return;
        }
        List<String> around = s.watch().crossings().entrySet().stream().filter(c -> mayHaveBeenOutside(c.getValue(), f))
                .map(Map.Entry::getKey).sorted().toList();
        if (!around.isEmpty()) {
            s.following().add(new Derived.DepartureNoted(DepartureKind.OUTSIDE_CONDITIONS, Words.of("soak.stoppedOutside", String.join(", ", around))));
        }
        Duration from = s.soak().seenFor();
        Duration to = ageOf(s, f.firstBad()).minus(s.soak().beganAge());
        String words = Words.of("soak.watchedStop", soak.keep().source(), Durations.words(from),
                Durations.words(to.compareTo(from) < 0 ? from : to)) + order(s, f);
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.DOES_NOT_CONFORM, s.soak().witnessed(), words));
        Moves.take(s, around.isEmpty() ? soak.stopped() : soak.stoppedOutside(), "watch", words, Outcome.DOES_NOT_CONFORM);
    }

    /** False only where the intervals between samples show that the condition was inside at the stop. */
    private static boolean mayHaveBeenOutside(Crossing c, WatchFact.Changed stop) {
        boolean wentOutLater = wentOutAfter(c, stop.firstBad());
        boolean cameBackEarlier = c.back().filter(back -> knownBefore(back, stop)).isPresent();
        return !wentOutLater && !cameBackEarlier;
    }

    private static boolean knownBefore(WatchFact.ConditionCrossed crossing, WatchFact.Changed stop) {
        return stop.lastGood().filter(good -> crossing.after().offset().compareTo(good.offset()) <= 0).isPresent();
    }

    private static boolean wentOutAfter(Crossing c, WatchFact.Sampled firstBad) {
        return c.out().before().filter(inside -> firstBad.offset().compareTo(inside.offset()) <= 0).isPresent();
    }

    /** What came first is said only where the intervals between samples do not overlap. */
    private static String order(RunState s, WatchFact.Changed stop) {
        List<String> said = new ArrayList<>();
        s.watch().crossings().forEach((name, c) -> {
            if (c.back().isEmpty() || mayHaveBeenOutside(c, stop)) {
                boolean before = knownBefore(c.out(), stop);
                boolean after = wentOutAfter(c, stop.firstBad());
                said.add(Words.of(before ? "soak.outBefore" : after ? "soak.outAfter" : "soak.outUnknown", name));
            }
        });
        return String.join("", said.stream().sorted().toList());
    }

    private static void condition(RunState s, SoakStage soak, WatchFact.ConditionCrossed f) {
        s.watch(s.watch().begun(f.by()).with(f));
        if (!f.inside()) {
            Limits limits = soak.conditions().stream().filter(c -> c.name().equals(f.condition())).findFirst().orElseThrow().limits();
            s.following().add(new Derived.DepartureNoted(DepartureKind.OUTSIDE_CONDITIONS,
                    Words.of("soak.outside", f.condition(), f.value(), limits)));
        }
    }

    /** The age of the test at a sample, which was taken some time before it was told; never before the soak began. */
    private static Duration ageOf(RunState s, WatchFact.Sampled sample) {
        Duration back = Duration.between(sample.received(), s.now().moment().instant());
        Duration age = back.isNegative() ? s.now().age() : s.now().age().minus(back);
        Duration earliest = s.soak().beganAge();
        return age.compareTo(earliest) < 0 ? earliest : age;
    }
}
