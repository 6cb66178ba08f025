package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowWay;

/** The flow in words. */
public final class FlowWords {

    private FlowWords() {
    }

    /** What is written beside a way. */
    public static String label(FlowWay way) {
        String kind = switch (way.kind()) {
            case NEXT, AS_WRITTEN, UNMET, FAILED, UNDECIDED -> "";
            case PASSED_OVER, BRANCH, STOPPED, STOPPED_OUTSIDE, GAP, UNWITNESSED, EVERY_END -> ProofText.of("way." + way.kind());
        };
        String bound = way.atMost().isPresent() ? ProofText.of("way.atMost", way.atMost().getAsInt()) : "";
        return Stream.of(kind, bound).filter(words -> !words.isEmpty()).collect(Collectors.joining(", "));
    }

    /** A place and the ways from it. */
    public static List<String> told(FlowDiagram flow, FlowPlace place) {
        List<String> told = new ArrayList<>();
        String heading = ProofText.of("place." + place.kind(), place.name());
        told.add(place.stage().isEmpty() ? heading : ProofText.of("place.inStage", heading, place.stage()));
        if (!place.words().isEmpty()) {
            told.add(place.words());
        }
        place.marks().stream().sorted().forEach(mark -> told.add(ProofText.of("mark." + mark)));
        flow.from(place).forEach(way -> told.add(told(flow, way)));
        return told;
    }

    private static String told(FlowDiagram flow, FlowWay way) {
        FlowPlace to = flow.places().get(way.to());
        // Whatever is not the straight way says why it is left.
        String why = way.reasons().isEmpty() ? ProofText.of("why." + way.kind()) : String.join("; ", way.reasons());
        String end = to.isEnd() && !to.words().isEmpty() ? ": " + to.words() : "";
        String bound = way.atMost().isPresent() ? " (" + ProofText.of("way.atMost", way.atMost().getAsInt()) + ")" : "";
        return ProofText.of("way.told", why, to.name() + end, bound);
    }
}
