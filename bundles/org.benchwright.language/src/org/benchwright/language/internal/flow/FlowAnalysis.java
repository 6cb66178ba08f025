package org.benchwright.language.internal.flow;

import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.SignalWord;
import org.benchwright.model.Derive;
import org.benchwright.model.Energise;
import org.benchwright.model.Guard;
import org.benchwright.model.Hazard;
import org.benchwright.model.Isolate;
import org.benchwright.model.LogEntry;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
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

    private final Facts[] before;
    private final Numbered<String> items = new Numbered<>();
    private final Numbered<Value> needed = new Numbered<>();

    /** Analyses a graph. */
    public FlowAnalysis(FlowGraph graph) {
        neededByDerived(graph);
        before = new Facts[graph.nodes().size()];
        before[graph.begin().id()] = Facts.start();
        // Places in the order of the text, so that what comes earlier is mostly settled before what follows it is looked at.
        BitSet open = new BitSet();
        open.set(graph.begin().id());
        for (int next = open.nextSetBit(0); next >= 0; next = open.nextSetBit(0)) {
            open.clear(next);
            FlowNode node = graph.nodes().get(next);
            Facts after = after(node, before[next]);
            for (FlowEdge edge : graph.from(node)) {
                // A step or a stage that is passed by is not read: its hazards were shown to nobody.
                Facts told = edge.cause() instanceof Guard ? before[next] : after;
                Facts known = before[edge.to().id()];
                Facts joined = known == null ? told : known.join(told);
                if (joined != known) {
                    before[edge.to().id()] = joined;
                    open.set(edge.to().id());
                }
            }
        }
    }

    /** What is known on arrival at a place; nothing where no way leads. */
    public Optional<FlowState> before(FlowNode node) {
        return Optional.ofNullable(before[node.id()])
                .map(facts -> new FlowState(facts.mayBeOn(), facts.hazardShown(), items.of(facts.recorded()), needed.of(facts.measured())));
    }

    /** Values that others are derived from; nothing else needs to be remembered. */
    private void neededByDerived(FlowGraph graph) {
        graph.nodes().stream().map(FlowNode::source).filter(Derive.class::isInstance)
                .flatMap(derive -> Procedures.references((Derive) derive).stream())
                .map(ValueReference::getValue).filter(Objects::nonNull).forEach(needed::number);
    }

    private Facts after(FlowNode node, Facts facts) {
        EObject source = node.source();
        if (source instanceof Energise) {
            return facts.on(true);
        } else if (source instanceof Isolate) {
            return facts.on(false);
        } else if (source instanceof LogEntry entry && entry.getItem() != null && entry.getItem().getName() != null) {
            return facts.withRecord(items.number(entry.getItem().getName()));
        } else if (source instanceof Value value && needed.contains(value)) {
            return facts.withValue(needed.number(value));
        }
        return hazards(source).stream().anyMatch(FlowAnalysis::isAboutPeople) ? facts.withHazard() : facts;
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
