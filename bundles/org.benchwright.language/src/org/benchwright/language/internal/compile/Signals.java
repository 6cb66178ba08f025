package org.benchwright.language.internal.compile;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.engine.plan.Action.AnyOf;
import org.benchwright.engine.plan.Signal;
import org.benchwright.model.DisplayIndication;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.LampIndication;
import org.benchwright.model.LampState;
import org.benchwright.model.LightPattern;
import org.benchwright.model.Mode;
import org.benchwright.model.ModeIndication;

/** Indications as written, as signals. */
public final class Signals {

    /** In percent, where a flash rate is written without a tolerance; common practice, no source. */
    private static final BigDecimal USUAL_TOLERANCE = BigDecimal.valueOf(20);

    private final Family family;
    private final Set<String> open = new HashSet<>();

    /** @param family the one of which the indications speak */
    public Signals(Family family) {
        this.family = family;
    }

    /** A sequence of alternatives: the n-th of each alternative stands at the n-th place. */
    public List<AnyOf> sequence(List<Indication> alternatives) {
        List<List<Signal>> spelledOut = alternatives.stream().map(this::inOrder).toList();
        int length = spelledOut.stream().mapToInt(List::size).max().orElse(0);
        List<AnyOf> sequence = new ArrayList<>();
        for (int i = 0; i < length; i++) {
            int place = i;
            sequence.add(new AnyOf(spelledOut.stream().filter(s -> place < s.size()).map(s -> s.get(place)).toList()));
        }
        return sequence;
    }

    /** An indication that says one state only. */
    Signal still(Indication indication) {
        return inOrder(indication).get(0);
    }

    private List<Signal> inOrder(Indication indication) {
        if (indication instanceof LampIndication lamp) {
            return lamp.getStates().stream().map(state -> lamp(lamp, state)).toList();
        } else if (indication instanceof DisplayIndication display) {
            return display.getTexts().stream().map(text -> (Signal) new Signal.DisplayShows(display.getDisplay().getName(),
                    display.getDisplay().getLabel(), text)).toList();
        }
        return List.of(ofMode(((ModeIndication) indication).getMode()));
    }

    /** A mode that is shown by itself in the end is shown by nothing more than what was said before it comes again. */
    Signal.ModeShows ofMode(Mode mode) {
        boolean again = !open.add(mode.getName());
        List<Signal> shows = again ? List.of() : Families.indications(family, mode).stream().map(this::still).toList();
        if (!again) {
            open.remove(mode.getName());
        }
        return new Signal.ModeShows(mode.getName(), shows);
    }

    private static Signal lamp(LampIndication written, LampState state) {
        org.benchwright.model.Lamp lamp = written.getLamp();
        String index = written.getIndex() == null ? "" : " " + written.getIndex();
        LampPattern pattern = pattern(state);
        Optional<LampColour> stated = Optional.ofNullable(state.getColour());
        Optional<LampColour> colour = pattern instanceof LampPattern.Off ? Optional.empty()
                : stated.or(() -> lamp.getColours().stream().findFirst());
        return new Signal.LampShows(lamp.getName() + index, FamilyCompiler.marking(lamp) + index, colour, pattern);
    }

    private static LampPattern pattern(LampState state) {
        if (state.getPattern() != LightPattern.FLASHING) {
            return state.getPattern() == LightPattern.OFF ? new LampPattern.Off() : new LampPattern.Steady();
        }
        if (state.getRate() != null) {
            return new LampPattern.Flashing(new FlashRate.Around(Amounts.quantity(state.getRate()),
                    state.getTolerance() == null ? USUAL_TOLERANCE : state.getTolerance().getValue()));
        }
        return new LampPattern.Flashing(switch (state.getSpeed()) {
            case SLOW -> new FlashRate.Slow();
            case NORMAL -> new FlashRate.Normal();
            case ANY -> new FlashRate.Any();
        });
    }

    /** The name that an expectation goes by: that of the first thing it speaks of. */
    public static String name(Indication indication) {
        if (indication instanceof LampIndication lamp) {
            return lamp.getLamp().getName() + (lamp.getIndex() == null ? "" : lamp.getIndex());
        } else if (indication instanceof DisplayIndication display) {
            return display.getDisplay().getName();
        }
        return ((ModeIndication) indication).getMode().getName();
    }
}
