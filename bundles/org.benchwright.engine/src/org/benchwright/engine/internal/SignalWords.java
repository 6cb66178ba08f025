package org.benchwright.engine.internal;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Signal;

/** Expected indications in the words of a record. */
final class SignalWords {

    private SignalWords() {
    }

    static String of(List<Action.AnyOf> sequence) {
        return sequence.stream().map(a -> a.signals().stream().map(SignalWords::of).collect(Collectors.joining(" or ")))
                .collect(Collectors.joining(", then "));
    }

    static String of(Signal signal) {
        if (signal instanceof Signal.LampShows l) {
            return l.marked() + l.colour().map(c -> " " + c.name().toLowerCase(Locale.ROOT)).orElse("") + " " + l.pattern().words();
        } else if (signal instanceof Signal.DisplayShows d) {
            return d.title() + " \"" + d.text() + "\"";
        }
        return "mode " + signal.source();
    }

    static String of(Action.Window w) {
        String opens = (w.by() ? "within " : "from ") + Durations.words(w.opens()) + " of " + w.mark();
        return w.lasting().isZero() ? opens : opens + ", lasting " + Durations.words(w.lasting());
    }
}
