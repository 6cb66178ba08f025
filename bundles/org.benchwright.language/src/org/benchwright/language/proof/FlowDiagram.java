package org.benchwright.language.proof;

import java.util.List;

import org.benchwright.language.internal.proof.FlowWords;

/**
 * The flow of a procedure as a graph, ready to be laid out. Ends stand beside the place that leads to them, one for each verdict, so that
 * no way crosses the whole picture. Making safe, which comes before every end, is a part of its own.
 *
 * @param places by number
 * @param ways   by the place that they leave
 */
public record FlowDiagram(List<FlowPlace> places, List<FlowWay> ways) {
    public FlowDiagram {
        places = List.copyOf(places);
        ways = List.copyOf(ways);
    }

    /** The ways that leave a place. */
    public List<FlowWay> from(FlowPlace place) {
        return ways.stream().filter(way -> way.from() == place.id()).toList();
    }

    /** A place in words: what it is, what is to be noticed, and where each way from it leads and why. */
    public List<String> told(FlowPlace place) {
        return FlowWords.told(this, place);
    }
}
