package org.benchwright.language.internal.flow;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.SignalWord;
import org.benchwright.model.Derive;
import org.benchwright.model.Energise;
import org.benchwright.model.Hazard;
import org.benchwright.model.Isolate;
import org.benchwright.model.LogEntry;
import org.benchwright.model.Procedure;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.benchwright.model.Value;
import org.benchwright.model.ValueReference;
import org.eclipse.emf.ecore.EObject;

/**
 * What is known at each place of a graph: the least fixpoint of the statements' effects over all ways. A state only ever loses
 * certainty and there are finitely many, so it ends.
 */
public final class FlowAnalysis {

    private final Map<FlowNode, FlowState> before = new HashMap<>();
    private final Set<Value> needed;

    /** Analyses a graph. */
    public FlowAnalysis(FlowGraph graph) {
        needed = neededByDerived(graph);
        Deque<FlowNode> open = new ArrayDeque<>(List.of(graph.begin()));
        before.put(graph.begin(), FlowState.START);
        while (!open.isEmpty()) {
            FlowNode node = open.remove();
            FlowState after = after(node, before.get(node));
            for (FlowEdge edge : graph.from(node)) {
                FlowState known = before.get(edge.to());
                FlowState joined = known == null ? after : known.join(after);
                if (!joined.equals(known)) {
                    before.put(edge.to(), joined);
                    open.add(edge.to());
                }
            }
        }
    }

    /** What is known on arrival at a place; nothing where no way leads. */
    public Optional<FlowState> before(FlowNode node) {
        return Optional.ofNullable(before.get(node));
    }

    /** Values that others are derived from; nothing else needs to be remembered. */
    private static Set<Value> neededByDerived(FlowGraph graph) {
        Set<Value> needed = new HashSet<>();
        graph.nodes().stream().map(FlowNode::source).filter(Derive.class::isInstance).forEach(derive -> derive.eAllContents()
                .forEachRemaining(each -> {
                    if (each instanceof ValueReference reference && reference.getValue() != null) {
                        needed.add(reference.getValue());
                    }
                }));
        return needed;
    }

    private FlowState after(FlowNode node, FlowState state) {
        EObject source = node.source();
        if (source instanceof Energise) {
            return state.on();
        } else if (source instanceof Isolate) {
            return state.off();
        } else if (source instanceof LogEntry entry && entry.getItem() != null && entry.getItem().getName() != null) {
            return state.withRecord(entry.getItem().getName());
        } else if (source instanceof Value value && needed.contains(value)) {
            return state.withValue(value);
        }
        return hazards(source).stream().anyMatch(FlowAnalysis::isAboutPeople) ? state.withHazard() : state;
    }

    private static List<Hazard> hazards(EObject source) {
        if (source instanceof Step step) {
            return step.getHazards();
        } else if (source instanceof Stage stage) {
            return withProcedures(stage, stage.getHazards());
        }
        return source instanceof Soak soak ? withProcedures(soak, soak.getHazards()) : List.of();
    }

    private static List<Hazard> withProcedures(EObject block, List<Hazard> own) {
        return block.eContainer() instanceof Procedure procedure
                ? Stream.concat(procedure.getShownHazards().stream(), own.stream()).toList() : own;
    }

    private static boolean isAboutPeople(Hazard hazard) {
        SignalWord signal = hazard.getSignal();
        return signal != null && signal.aboutInjury();
    }
}
