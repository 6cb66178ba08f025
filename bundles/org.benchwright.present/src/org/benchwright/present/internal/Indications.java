package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.LampColour;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.UnitFamily;

/** Expected indications in words: the legend on the unit, colour and pattern each by its word. */
public final class Indications {

    private final UnitFamily family;

    /** @param family the family whose lamps are meant */
    public Indications(UnitFamily family) {
        this.family = family;
    }

    /** What shows, one after the other. */
    public String of(List<Action.AnyOf> sequence) {
        return sequence.stream().map(this::of).collect(Collectors.joining(Message.SIGNAL_THEN.text()));
    }

    private String of(Action.AnyOf any) {
        return any.signals().stream().map(this::of).collect(Collectors.joining(Message.SIGNAL_OR.text()));
    }

    /** One signal. */
    public String of(Signal signal) {
        if (signal instanceof Signal.LampShows lamp) {
            return lamp(lamp);
        } else if (signal instanceof Signal.DisplayShows display) {
            return Message.SIGNAL_DISPLAY.text(display.title(), display.text());
        }
        Signal.ModeShows mode = (Signal.ModeShows) signal;
        return mode.shows().isEmpty() ? Message.SIGNAL_MODE.text(mode.source())
                : Message.SIGNAL_MODE_SHOWS.text(mode.source(), all(mode.shows()));
    }

    /** Several signals that show together. */
    public String all(List<Signal> signals) {
        return signals.stream().map(this::of).collect(Collectors.joining(Message.SIGNAL_AND.text()));
    }

    private String lamp(Signal.LampShows lamp) {
        List<String> words = new ArrayList<>();
        words.add(lamp.marked());
        lamp.colour().map(LampColour::label).ifPresent(words::add);
        words.add(lamp.pattern().words());
        Optional<String> title = family.lamps().stream().filter(l -> l.name().equals(lamp.source())).findFirst().map(Lamp::title)
                .filter(t -> !t.isBlank() && !t.toLowerCase(Locale.ROOT).equals(lamp.marked().toLowerCase(Locale.ROOT)));
        title.ifPresent(t -> words.add(1, "(" + t + ")"));
        return String.join(" ", words);
    }

    /** What is expected, and when. */
    public String line(Action.Expect expect) {
        Action.Window window = expect.window();
        String opens = (window.by() ? Message.EXPECT_WITHIN : Message.EXPECT_FROM).text(of(expect.sequence()),
                Durations.words(window.opens()), window.mark());
        return window.lasting().isZero() ? opens : Message.EXPECT_LASTING.text(opens, Durations.words(window.lasting()));
    }

    /** The question once the tones have sounded. */
    public String question(Action.Expect expect) {
        Action.Window window = expect.window();
        if (window.lasting().isZero()) {
            return (window.by() && expect.sequence().size() > 1 ? Message.ASK_SEQUENCE : Message.ASK_AT_TONE).text(of(expect.sequence()));
        }
        return Message.ASK_BETWEEN_TONES.text(of(expect.sequence()));
    }
}
