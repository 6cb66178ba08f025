package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.LampColour;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.DisplayIndication;
import org.benchwright.model.Expectation;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampGroup;
import org.benchwright.model.LampIndication;
import org.benchwright.model.LampState;
import org.benchwright.model.LightPattern;
import org.benchwright.model.Mode;
import org.benchwright.model.ModeIndication;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Soak;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;

/** What is said to show can show: the lamp has the colour, the display the room, the mode something that shows it. */
final class IndicationInspection implements Inspection {

    /** Beyond it most people take a lamp that flashes for one that is steady but dim; common practice, no source. */
    private static final int FASTEST_HERTZ = 20;
    private static final UnitOfMeasure HERTZ = UnitOfMeasure.of("Hz");
    private static final UnitOfMeasure PERCENT = UnitOfMeasure.of("%");

    @Override
    public void piece(EObject piece, Remarks remarks) {
        if (piece instanceof LampIndication lamp) {
            lamp(lamp, remarks);
        } else if (piece instanceof DisplayIndication display) {
            display(display, remarks);
        } else if (piece instanceof LampState state) {
            rate(state, remarks);
        }
    }

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        Optional<Family> family = Written.thing(procedure.getFamily());
        if (family.isEmpty()) {
            return;
        }
        procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast)
                .forEach(soak -> modes(soak.getKeeps(), family.get(), remarks));
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Written.thing(procedure.getFamily()).ifPresent(family -> Procedures.statements(step, Expectation.class)
                .forEach(expectation -> modes(expectation.getAlternatives(), family, remarks)));
    }

    /** Whether something can be seen of a mode: it is shown by a lamp or a display, or by a mode that is. */
    private static boolean isShown(Family family, Mode mode, Set<Mode> looked) {
        return looked.add(mode) && Families.indications(family, mode).stream().anyMatch(shown -> !(shown instanceof ModeIndication other)
                || Written.thing(other.getMode()).filter(inner -> isShown(family, inner, looked)).isPresent());
    }

    private static void modes(List<Indication> indications, Family family, Remarks remarks) {
        indications.stream().filter(ModeIndication.class::isInstance).map(ModeIndication.class::cast).forEach(shown -> {
            Optional<Mode> mode = Written.thing(shown.getMode());
            if (mode.isPresent() && !isShown(family, mode.get(), new HashSet<>())) {
                remarks.on(shown, Literals.MODE_INDICATION__MODE, RemarkCode.MODE_NEVER_SHOWN, mode.get().getName());
            }
        });
    }

    private static void lamp(LampIndication indication, Remarks remarks) {
        Optional<Lamp> found = Written.thing(indication.getLamp());
        if (found.isEmpty()) {
            return;
        }
        Lamp lamp = found.get();
        if (indication.getIndex() != null && !hasLamp(lamp, indication.getIndex())) {
            remarks.on(indication, Literals.LAMP_INDICATION__INDEX, RemarkCode.NO_SUCH_LAMP_IN_GROUP, lamp.getName(),
                    indication.getIndex().toString());
        }
        indication.getStates().forEach(state -> colour(state, lamp, remarks));
    }

    private static boolean hasLamp(Lamp lamp, int index) {
        return lamp instanceof LampGroup group && group.getFirst() <= index && index <= group.getLast();
    }

    private static void colour(LampState state, Lamp lamp, Remarks remarks) {
        LampColour colour = state.getColour();
        if (colour != null && !lamp.getColours().contains(colour)) {
            remarks.on(state, Literals.LAMP_STATE__COLOUR, RemarkCode.COLOUR_NOT_OF_LAMP, lamp.getName(),
                    colour.name().toLowerCase(Locale.ROOT));
        } else if (colour == null && state.getPattern() != LightPattern.OFF && lamp.getColours().size() > 1) {
            remarks.on(state, RemarkCode.COLOUR_NOT_SAID, lamp.getName());
        }
    }

    private static void rate(LampState state, Remarks remarks) {
        boolean visible = Written.quantity(state.getRate()).filter(rate -> rate.unit().sameDimension(HERTZ)).map(rate -> rate.in(HERTZ))
                .map(hertz -> hertz > 0 && hertz <= FASTEST_HERTZ).orElse(true);
        boolean tolerable = Written.quantity(state.getTolerance()).filter(tolerance -> tolerance.unit().sameDimension(PERCENT))
                .map(tolerance -> tolerance.in(PERCENT))
                .map(percent -> percent >= 0 && percent < 100).orElse(true);
        if (!visible) {
            remarks.on(state, Literals.LAMP_STATE__RATE, RemarkCode.FLASH_RATE_OUT_OF_RANGE, Integer.toString(FASTEST_HERTZ));
        }
        if (!tolerable) {
            remarks.on(state, Literals.LAMP_STATE__TOLERANCE, RemarkCode.FLASH_RATE_OUT_OF_RANGE, Integer.toString(FASTEST_HERTZ));
        }
    }

    private static void display(DisplayIndication indication, Remarks remarks) {
        Written.thing(indication.getDisplay()).ifPresent(display -> {
            for (int i = 0; i < indication.getTexts().size(); i++) {
                if (indication.getTexts().get(i).codePointCount(0, indication.getTexts().get(i).length()) > display.getCharacters()) {
                    remarks.on(indication, Literals.DISPLAY_INDICATION__TEXTS, i, RemarkCode.DISPLAY_TEXT_TOO_LONG,
                            Integer.toString(display.getCharacters()));
                }
            }
        });
    }
}
