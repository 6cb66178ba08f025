package org.benchwright.language.internal.flow;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;
import java.util.Iterator;
import java.util.function.Predicate;

/**
 * Which places of a graph lie on a common circle: its strongly connected parts, by R. E. Tarjan's algorithm (Depth-first search and linear
 * graph algorithms, SIAM Journal on Computing 1, 1972), in time that grows with the number of ways only. Without recursion: a way through a
 * procedure may have thousands of places.
 */
public final class FlowCircles {

    private final FlowGraph graph;
    private final Predicate<FlowEdge> ways;
    private final int[] order;
    private final int[] lowest;
    private final int[] part;
    private final Deque<FlowNode> open = new ArrayDeque<>();
    private final BitSet isOpen = new BitSet();
    private int visited;
    private int parts;

    /** A place that is being looked at, and the ways from it that still have to be. */
    private record Visit(FlowNode node, Iterator<FlowEdge> rest) {
    }

    /**
     * Finds the circles.
     *
     * @param graph a graph
     * @param ways  only these count
     */
    public FlowCircles(FlowGraph graph, Predicate<FlowEdge> ways) {
        this.graph = graph;
        this.ways = ways;
        order = new int[graph.nodes().size()];
        lowest = new int[graph.nodes().size()];
        part = new int[graph.nodes().size()];
        graph.nodes().stream().filter(node -> order[node.id()] == 0).forEach(this::visit);
    }

    /** Whether one can come back to where a way begins after it was taken. */
    public boolean closes(FlowEdge way) {
        return ways.test(way) && part[way.from().id()] == part[way.to().id()];
    }

    private void visit(FlowNode start) {
        Deque<Visit> path = new ArrayDeque<>();
        enter(start, path);
        while (!path.isEmpty()) {
            Visit visit = path.peek();
            if (visit.rest().hasNext()) {
                follow(visit.node(), visit.rest().next(), path);
            } else {
                path.pop();
                leave(visit.node(), path);
            }
        }
    }

    private void enter(FlowNode node, Deque<Visit> path) {
        visited++;
        order[node.id()] = visited;
        lowest[node.id()] = visited;
        open.push(node);
        isOpen.set(node.id());
        path.push(new Visit(node, graph.from(node).iterator()));
    }

    private void follow(FlowNode from, FlowEdge way, Deque<Visit> path) {
        int to = way.to().id();
        if (ways.test(way) && order[to] == 0) {
            enter(way.to(), path);
        } else if (ways.test(way) && isOpen.get(to)) {
            lowest[from.id()] = Math.min(lowest[from.id()], order[to]);
        }
    }

    private void leave(FlowNode node, Deque<Visit> path) {
        if (lowest[node.id()] == order[node.id()]) {
            parts++;
            FlowNode each;
            do {
                each = open.pop();
                isOpen.clear(each.id());
                part[each.id()] = parts;
            } while (each != node);
        }
        if (!path.isEmpty()) {
            int before = path.peek().node().id();
            lowest[before] = Math.min(lowest[before], lowest[node.id()]);
        }
    }
}
