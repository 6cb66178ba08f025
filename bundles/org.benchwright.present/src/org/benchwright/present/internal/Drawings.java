package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Signal;
import org.benchwright.present.ExpectedIndication;
import org.benchwright.present.ExpectedIndication.Alternatives;
import org.benchwright.present.ExpectedIndication.Shown;

/** The expected indications of what a test needs now, to be drawn. */
public final class Drawings {

    private final Indications indications;

    private Drawings(TestRun run) {
        this.indications = new Indications(run.plan().family());
    }

    /** What to watch for now, in the order of the step; none where nothing is watched. */
    public static List<ExpectedIndication> of(TestRun run) {
        Drawings drawings = new Drawings(run);
        Demand demand = run.demand();
        if (demand instanceof Demand.Look look) {
            Shown keep = drawings.shown(look.soak().keep());
            return List.of(new ExpectedIndication(drawings.indications.of(look.soak().keep()),
                    List.of(new Alternatives(List.of(keep))), true));
        }
        boolean timed = demand instanceof Demand.PressMark || demand instanceof Demand.AwaitTone
                || demand instanceof Demand.AnswerExpectation;
        Optional<Place> place = timed ? run.place() : Optional.empty();
        List<ExpectedIndication> all = new ArrayList<>();
        place.ifPresent(p -> p.step().actions().stream().filter(Action.Expect.class::isInstance)
                .forEach(action -> all.add(drawings.expected((Action.Expect) action, demand))));
        return all;
    }

    private ExpectedIndication expected(Action.Expect expect, Demand demand) {
        boolean asked = demand instanceof Demand.AnswerExpectation d && d.expect().id().equals(expect.id())
                || demand instanceof Demand.AwaitTone t && t.expect().id().equals(expect.id());
        return new ExpectedIndication(indications.line(expect), expect.sequence().stream()
                .map(any -> new Alternatives(any.signals().stream().map(this::shown).toList())).toList(), asked);
    }

    private Shown shown(Signal signal) {
        if (signal instanceof Signal.LampShows lamp) {
            String colour = lamp.colour().map(LampColour::label).map(label -> label + " ").orElse("");
            return new ExpectedIndication.Lamp(lamp.marked(), lamp.colour(), lamp.pattern(), colour + lamp.pattern().words());
        } else if (signal instanceof Signal.DisplayShows display) {
            return new ExpectedIndication.Display(display.title(), display.text());
        }
        Signal.ModeShows mode = (Signal.ModeShows) signal;
        return new ExpectedIndication.Mode(Message.SIGNAL_MODE.text(mode.source()), mode.shows().stream().map(this::shown).toList());
    }
}
