package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Signal;
import org.benchwright.language.internal.compile.Signals;
import org.benchwright.language.internal.proof.Contradictions;
import org.benchwright.model.DisplayIndication;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.LampIndication;
import org.benchwright.model.Mode;
import org.benchwright.model.ModeIndication;

/** What a unit shows while an expectation holds: one of these signals, the last of a sequence. */
record Shown(String name, List<Signal> oneOf) {

    /** Nothing where names lead nowhere, which is remarked on elsewhere. */
    static Optional<Shown> last(List<Indication> alternatives, Family family) {
        if (alternatives.isEmpty() || !alternatives.stream().allMatch(each -> isKnown(each, family, new HashSet<>()))) {
            return Optional.empty();
        }
        return Written.sound(() -> {
            List<Action.AnyOf> sequence = new Signals(family).sequence(alternatives);
            return Optional.of(new Shown(Signals.name(alternatives.get(0)), sequence.get(sequence.size() - 1).signals()));
        });
    }

    private static boolean isKnown(Indication indication, Family family, Set<Mode> looked) {
        if (indication instanceof LampIndication lamp) {
            return Written.thing(lamp.getLamp()).isPresent() && !lamp.getStates().isEmpty();
        } else if (indication instanceof DisplayIndication display) {
            return Written.thing(display.getDisplay()).isPresent() && !display.getTexts().isEmpty();
        }
        Optional<Mode> mode = Written.thing(((ModeIndication) indication).getMode());
        return mode.isPresent() && (!looked.add(mode.get()) || Families.indications(family, mode.get()).stream()
                .allMatch(each -> isKnown(each, family, looked)));
    }

    /** Whether no unit can show both at once, whichever of their signals it shows. */
    boolean excludes(Shown other) {
        return oneOf.stream().allMatch(one -> other.oneOf.stream().allMatch(its -> Contradictions.exclude(List.of(one), its)));
    }
}
