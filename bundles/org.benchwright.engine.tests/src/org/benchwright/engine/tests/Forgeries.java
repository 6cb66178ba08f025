package org.benchwright.engine.tests;

import java.time.Duration;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;

/** Derived events that say something else than they did. */
final class Forgeries {

    private Forgeries() {
    }

    static Derived of(Derived d) {
        if (d instanceof Derived.PreconditionExpired p) {
            return new Derived.PreconditionExpired(p.precondition() + "x");
        } else if (d instanceof Derived.StepOpened o) {
            return new Derived.StepOpened(o.stage(), o.step(), o.visit() + 1);
        } else if (d instanceof Derived.WaitBegan w) {
            return new Derived.WaitBegan(w.check() + "x");
        } else if (d instanceof Derived.CheckDecided c) {
            return new Derived.CheckDecided(c.check(), other(c.outcome()), c.numbers(), c.words());
        } else if (d instanceof Derived.StepDecided s) {
            return new Derived.StepDecided(s.stage(), s.step(), other(s.outcome()));
        } else if (d instanceof Derived.Repeated r) {
            return new Derived.Repeated(r.stage(), r.step(), r.check(), r.reason(), r.count() - 1);
        } else if (d instanceof Derived.Moved m) {
            return new Derived.Moved(m.stage(), m.step() + "x", m.because());
        } else if (d instanceof Derived.SoakBegun b) {
            return new Derived.SoakBegun(b.stage(), b.attempt() + 1, b.nextDue());
        } else if (d instanceof Derived.SoakWitnessed w) {
            return new Derived.SoakWitnessed(w.stage(), w.witnessed().plus(Duration.ofHours(1)), w.nextDue());
        } else if (d instanceof Derived.SoakEnded e) {
            return new Derived.SoakEnded(e.stage(), other(e.outcome()), e.witnessed(), e.words());
        } else if (d instanceof Derived.DepartureNoted n) {
            DepartureKind other = n.kind() == DepartureKind.REPEATED ? DepartureKind.RELEASED : DepartureKind.REPEATED;
            return new Derived.DepartureNoted(other, n.words());
        }
        return end(d);
    }

    private static Derived end(Derived d) {
        if (d instanceof Derived.NonconformityNoted n) {
            return new Derived.NonconformityNoted(n.stage(), n.step(), n.words() + " not really");
        } else if (d instanceof Derived.ConclusionReached c) {
            return new Derived.ConclusionReached(other(c.verdict()), c.reason());
        } else if (d instanceof Derived.Concluded c) {
            return new Derived.Concluded(other(c.verdict()), c.reason());
        } else if (d instanceof Derived.RehearsalEnded e) {
            return new Derived.Concluded(e.wouldBe(), e.reason());
        } else if (d instanceof Derived.MadeSafe) {
            return new Derived.DepartureNoted(DepartureKind.RELEASED, "not made safe");
        }
        throw new AssertionError("no forgery of " + d);
    }

    private static Outcome other(Outcome outcome) {
        return outcome == Outcome.CONFORMS ? Outcome.DOES_NOT_CONFORM : Outcome.CONFORMS;
    }

    private static Verdict other(Verdict verdict) {
        return verdict == Verdict.ACCEPTED ? Verdict.REJECTED : Verdict.ACCEPTED;
    }
}
