package org.benchwright.engine.tests;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.SoakStage;

/** The key of what an {@link ObviousModel} asks for. */
final class ObviousDemand {

    private final ObviousModel test;

    private ObviousDemand(ObviousModel test) {
        this.test = test;
    }

    static String of(ObviousModel test) {
        return new ObviousDemand(test).key();
    }

    private String key() {
        if (test.ended.isPresent()) {
            return "end";
        } else if (test.powerAsked) {
            return "power";
        } else if (test.release.isPresent()) {
            return inStep(test.release.get().check() + ".release");
        } else if (test.toSwitchOff().isPresent()) {
            return inStep(test.toSwitchOff().get() + ".off");
        } else if (!test.openPreconditions.isEmpty() && !test.makingSafe()) {
            return "precondition." + test.openPreconditions.get(0);
        } else if (test.hazardToRead().isPresent()) {
            return "hazard." + test.hazardToRead().get();
        } else if (test.here() instanceof SoakStage soak) {
            return soak.name() + (test.soak.underWay() ? ".look" : ".begin");
        }
        return instrument().map(i -> "instrument." + i).orElseGet(() -> inStep(action()));
    }

    private String inStep(String rest) {
        return test.stepName() + "." + rest;
    }

    private Optional<String> instrument() {
        List<String> needed = new ArrayList<>();
        if (test.current() instanceof Action.Measure m) {
            needed.add(m.instrument());
        } else if (test.current() instanceof Action.Apply a) {
            needed.add(a.instrument());
        } else if (test.current() instanceof Action.Grid g) {
            needed.add(g.instrument().orElseThrow());
        }
        return needed.stream().filter(i -> test.log.count("instrument", i) == 0).findFirst();
    }

    private String action() {
        Action action = test.current();
        if (action instanceof Action.Energise e) {
            return e.item() + ".on";
        } else if (action instanceof Action.Isolate i) {
            return i.item() + ".off";
        } else if (action instanceof Action.Expect) {
            return expectation();
        } else if (action instanceof Action.Measure m) {
            int readings = test.all(Observation.Measured.class).size();
            return readings > test.all(Observation.ReasonGiven.class).size() ? m.id() + ".reason" : m.id();
        } else if (action instanceof Action.Choose c) {
            int answered = test.all(Observation.ItemConfirmed.class).size();
            return c.id() + "." + Stream.concat(c.only().stream(), c.spare().stream()).toList().get(answered).name();
        } else if (action instanceof Action.Release r) {
            return r.id() + ".release";
        }
        return action.id();
    }

    private record Tone(Action.Expect expect, boolean opens) {
    }

    private String expectation() {
        List<Tone> tones = new ArrayList<>();
        for (Action.Expect e : test.expected()) {
            if (test.sight(e).isEmpty() && !test.toneGiven(e, true)) {
                tones.add(new Tone(e, true));
            }
            if (test.sight(e).isEmpty() && !e.window().lasting().isZero() && !test.toneGiven(e, false)) {
                tones.add(new Tone(e, false));
            }
        }
        tones.sort(Comparator.comparing(t -> test.due(t.expect(), t.opens())));
        return tones.isEmpty() ? test.expected().stream().filter(e -> test.sight(e).isEmpty()).findFirst().orElseThrow().id()
                : tones.get(0).expect().id() + ".tone";
    }
}
