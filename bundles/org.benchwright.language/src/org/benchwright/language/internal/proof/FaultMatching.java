package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.FaultNote;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Signal;
import org.benchwright.language.proof.FaultProof;
import org.benchwright.language.proof.FaultProof.How;
import org.benchwright.language.proof.FaultProof.Reveal;

/** Which places reveal which fault, among those that a test can come to. */
final class FaultMatching {

    private final Spots spots;
    private final Set<Integer> reached;

    private FaultMatching(Spots spots, Set<Integer> reached) {
        this.spots = spots;
        this.reached = reached;
    }

    static List<FaultProof> of(Plan plan, Spots spots, Set<Integer> reached) {
        FaultMatching matching = new FaultMatching(spots, reached);
        return plan.family().faults().stream().map(matching::fault).toList();
    }

    private FaultProof fault(FaultNote fault) {
        List<Reveal> reveals = new ArrayList<>();
        spots.all().stream().filter(spot -> reached.contains(spot.id())).forEach(spot -> reveals(fault, spot, reveals));
        return new FaultProof(fault.code(), fault.title(), reveals);
    }

    private static void reveals(FaultNote fault, Spot spot, List<Reveal> reveals) {
        boolean onDemand = spot.stage().filter(Spots::onDemand).isPresent();
        if (spot.step().filter(step -> step.reveals().contains(fault.code())).isPresent()) {
            reveals.add(new Reveal(spot.shown(), How.DECLARED, "", onDemand));
        }
        spot.step().stream().flatMap(step -> step.actions().stream()).filter(Action.Expect.class::isInstance).map(Action.Expect.class::cast)
                .filter(expect -> fails(fault, expect)).findFirst()
                .ifPresent(expect -> reveals.add(new Reveal(spot.shown(), How.SHOWN, words(last(expect)), onDemand)));
        spot.soak().filter(soak -> Contradictions.exclude(fault.shows(), soak.keep()))
                .ifPresent(soak -> reveals.add(new Reveal(spot.shown(), How.SHOWN, soak.keep().source(), onDemand)));
    }

    /** What comes last of a sequence has to show while the fault does; it can't if the fault excludes each alternative. */
    private static boolean fails(FaultNote fault, Action.Expect expect) {
        return last(expect).signals().stream().allMatch(signal -> Contradictions.exclude(fault.shows(), signal));
    }

    private static Action.AnyOf last(Action.Expect expect) {
        return expect.sequence().get(expect.sequence().size() - 1);
    }

    private static String words(Action.AnyOf any) {
        return any.signals().stream().map(FaultMatching::words).collect(Collectors.joining(" " + ProofText.of("or") + " "));
    }

    private static String words(Signal signal) {
        if (signal instanceof Signal.LampShows lamp) {
            return lamp.source() + " " + lamp.colour().map(colour -> colour.word() + " ").orElse("") + lamp.pattern().words();
        } else if (signal instanceof Signal.DisplayShows display) {
            return display.source() + " " + display.text();
        }
        return signal.source();
    }
}
