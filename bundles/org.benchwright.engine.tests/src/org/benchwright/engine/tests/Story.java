package org.benchwright.engine.tests;

import java.util.List;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.TestEvent;

/** What a record derived, without the words: one line for each derived event. */
final class Story {

    private Story() {
    }

    static List<String> of(List<TestEvent> events) {
        return events.stream().filter(e -> e.body() instanceof Derived).map(e -> line((Derived) e.body())).toList();
    }

    private static String line(Derived d) {
        if (d instanceof Derived.PreconditionExpired p) {
            return "expired " + p.precondition();
        } else if (d instanceof Derived.StepOpened o) {
            return "opened " + o.step() + " " + o.visit();
        } else if (d instanceof Derived.WaitBegan w) {
            return "wait " + w.check();
        } else if (d instanceof Derived.CheckDecided c) {
            return "decided " + c.check() + " " + c.outcome();
        } else if (d instanceof Derived.StepDecided s) {
            return "closed " + s.step() + " " + s.outcome();
        } else if (d instanceof Derived.Repeated r) {
            return "repeated " + r.step() + "." + r.check() + " " + r.count();
        } else if (d instanceof Derived.Moved m) {
            return "moved to " + m.stage() + "." + m.step();
        } else if (d instanceof Derived.DepartureNoted n) {
            return "departure " + n.kind();
        } else if (d instanceof Derived.NonconformityNoted n) {
            return "nonconformity " + n.stage() + "." + n.step();
        }
        return ending(d);
    }

    private static String ending(Derived d) {
        if (d instanceof Derived.SoakBegun b) {
            return "soak begun " + b.attempt();
        } else if (d instanceof Derived.SoakWitnessed w) {
            return "soak witnessed " + w.witnessed() + ", next in " + w.nextDue();
        } else if (d instanceof Derived.SoakEnded e) {
            return "soak ended " + e.outcome() + " " + e.witnessed();
        } else if (d instanceof Derived.ConclusionReached c) {
            return "concluding " + c.verdict();
        } else if (d instanceof Derived.MadeSafe) {
            return "made safe";
        } else if (d instanceof Derived.Concluded c) {
            return "verdict " + c.verdict();
        } else if (d instanceof Derived.RehearsalEnded r) {
            return "would be " + r.wouldBe();
        }
        throw new AssertionError("no line for " + d);
    }
}
