package org.benchwright.language.internal.flow;

import java.util.AbstractSet;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** The ways through one procedure. Built once, then only read. */
public final class FlowGraph {

    private final FlowNode begin;
    private final List<FlowNode> nodes;
    private final List<List<FlowEdge>> outgoing;

    FlowGraph(FlowNode begin, List<FlowNode> nodes, List<FlowEdge> edges) {
        this.begin = begin;
        this.nodes = List.copyOf(nodes);
        List<List<FlowEdge>> from = new ArrayList<>();
        nodes.forEach(node -> from.add(new ArrayList<>()));
        edges.forEach(edge -> from.get(edge.from().id()).add(edge));
        outgoing = from.stream().map(List::copyOf).toList();
    }

    /** Where every test begins. */
    public FlowNode begin() {
        return begin;
    }

    /** All places, in the order of the text. */
    public List<FlowNode> nodes() {
        return nodes;
    }

    /** The ways on from a place. */
    public List<FlowEdge> from(FlowNode node) {
        return outgoing.get(node.id());
    }

    /** All ways. */
    public List<FlowEdge> edges() {
        return outgoing.stream().flatMap(List::stream).toList();
    }

    /** The places of a kind. */
    public List<FlowNode> nodes(FlowNode.Kind kind) {
        return nodes.stream().filter(node -> node.kind() == kind).toList();
    }

    /** The places that can be reached from one, itself included, by ways of which a condition holds. */
    public Set<FlowNode> reachable(FlowNode start, Predicate<FlowEdge> ways) {
        BitSet seen = new BitSet();
        Deque<FlowNode> open = new ArrayDeque<>(List.of(start));
        seen.set(start.id());
        while (!open.isEmpty()) {
            for (FlowEdge edge : from(open.remove())) {
                if (ways.test(edge) && !seen.get(edge.to().id())) {
                    seen.set(edge.to().id());
                    open.add(edge.to());
                }
            }
        }
        return new AbstractSet<>() {
            @Override
            public boolean contains(Object node) {
                return node instanceof FlowNode known && known.id() < nodes.size() && seen.get(known.id()) && nodes.get(known.id()) == node;
            }

            @Override
            public Iterator<FlowNode> iterator() {
                return seen.stream().mapToObj(nodes::get).iterator();
            }

            @Override
            public int size() {
                return seen.cardinality();
            }
        };
    }
}
