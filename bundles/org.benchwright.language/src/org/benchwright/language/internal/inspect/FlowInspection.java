package org.benchwright.language.internal.inspect;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Verdict;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.flow.FlowAnalysis;
import org.benchwright.language.internal.flow.FlowBuilder;
import org.benchwright.language.internal.flow.FlowEdge;
import org.benchwright.language.internal.flow.FlowGraph;
import org.benchwright.language.internal.flow.FlowNode;
import org.benchwright.language.internal.flow.FlowNode.Kind;
import org.benchwright.language.internal.flow.FlowState;
import org.benchwright.model.Attachment;
import org.benchwright.model.Block;
import org.benchwright.model.Conclude;
import org.benchwright.model.Derive;
import org.benchwright.model.Energise;
import org.benchwright.model.Erase;
import org.benchwright.model.FitUnit;
import org.benchwright.model.GoTo;
import org.benchwright.model.Guard;
import org.benchwright.model.Hazard;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.RemoveUnit;
import org.benchwright.model.Stage;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;

/** What holds on every way through the procedure: an end, a safe one, nothing live when hands are on it, no trace lost. */
final class FlowInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        FlowGraph graph = FlowBuilder.build(procedure);
        Set<FlowNode> reached = graph.reachable(graph.begin(), way -> true);
        unreachable(graph, reached, remarks);
        excluded(procedure, remarks);
        graph.nodes(Kind.LOST).stream().filter(reached::contains)
                .forEach(lost -> remarks.on(lost.source(), RemarkCode.NO_CONCLUSION, name(lost.source())));
        endless(graph, reached, remarks);
        claimed(procedure, graph, remarks);
        FlowAnalysis analysis = new FlowAnalysis(graph);
        graph.nodes().forEach(node -> analysis.before(node).ifPresent(state -> place(node, state, remarks)));
    }

    private static void unreachable(FlowGraph graph, Set<FlowNode> reachedNodes, Remarks remarks) {
        Set<EObject> reached = Collections.newSetFromMap(new IdentityHashMap<>());
        reachedNodes.forEach(node -> {
            reached.add(node.source());
            if (node.kind() == Kind.STEP) {
                // Whoever goes right to a step is in its stage.
                reached.add(node.source().eContainer());
            }
        });
        for (FlowNode node : graph.nodes()) {
            boolean block = node.kind() == Kind.STAGE || node.kind() == Kind.SOAK;
            if (reachedNodes.contains(node) || block && reached.contains(node.source())) {
                continue;
            } else if (block) {
                remarks.on(node.source(), RemarkCode.STAGE_UNREACHABLE, name(node.source()));
            } else if (node.kind() == Kind.STEP && reached.contains(node.source().eContainer())) {
                remarks.on(node.source(), RemarkCode.STEP_UNREACHABLE, name(node.source()));
            } else if (node.kind() == Kind.STATEMENT && isFirstAfterEnd(node, reached)) {
                remarks.on(node.source(), RemarkCode.STATEMENT_UNREACHABLE);
            }
        }
    }

    /** A stage for units that have an option, and in it a step for those that have it not. What is seen may be another time than before. */
    private static void excluded(Procedure procedure, Remarks remarks) {
        for (Block block : procedure.getBlocks()) {
            Optional<Guard> whole = block instanceof Stage stage ? Optional.ofNullable(stage.getOnly()) : Optional.empty();
            Procedures.steps(block).stream().filter(step -> step.getOnly() != null
                    && whole.filter(guard -> exclude(guard, step.getOnly())).isPresent())
                    .forEach(step -> remarks.on(step, RemarkCode.STEP_UNREACHABLE, name(step)));
        }
    }

    private static boolean exclude(Guard one, Guard other) {
        return Written.thing(one.getOption()).filter(option -> option == other.getOption()).isPresent() && one.isNegated() != other.isNegated();
    }

    private static boolean isFirstAfterEnd(FlowNode node, Set<EObject> reached) {
        List<Statement> statements = ((Step) node.source().eContainer()).getStatements();
        int at = statements.indexOf(node.source());
        return at > 0 && reached.contains(statements.get(at - 1));
    }

    /** Without ways that lead back and can be taken any number of times there is no endless circle, and everybody sees that there is none. */
    private static void endless(FlowGraph graph, Set<FlowNode> reached, Remarks remarks) {
        graph.edges().stream().filter(edge -> edge.cause() instanceof GoTo && reached.contains(edge.from()))
                .filter(edge -> edge.leadsBack() && !edge.bounded())
                .map(FlowEdge::cause).distinct()
                .forEach(goTo -> remarks.on(goTo, Literals.GO_TO__TARGET, RemarkCode.ENDLESS_REPEAT));
    }

    /** A claim holds for each unit that is accepted: no way to there leads past the soaks that support it. */
    private static void claimed(Procedure procedure, FlowGraph graph, Remarks remarks) {
        Set<EObject> supporting = Collections.newSetFromMap(new IdentityHashMap<>());
        supporting.addAll(SoakInspection.supporting(procedure));
        // The way on from a soak that was gone through, or whose gap somebody let pass; not those that a stop takes.
        Set<FlowNode> unsoaked = graph.reachable(graph.begin(), way -> !supporting.contains(way.from().source())
                || way.cause() != way.from().source() && !(way.cause() instanceof Release));
        if (!supporting.isEmpty() && graph.nodes(Kind.CONCLUDED).stream().filter(unsoaked::contains).map(FlowNode::source)
                .anyMatch(end -> end instanceof Conclude conclude && conclude.getVerdict() == Verdict.ACCEPTED)) {
            remarks.on(procedure.getClaim(), RemarkCode.CLAIM_WITHOUT_SOAK);
        }
    }

    private static void place(FlowNode node, FlowState state, Remarks remarks) {
        EObject source = node.source();
        if (node.kind() == Kind.OVER && state.mayBeOn()) {
            Procedure procedure = (Procedure) source;
            remarks.on(procedure.getMakeSafe() == null ? procedure : procedure.getMakeSafe(), RemarkCode.ENERGISED_AT_END);
        } else if (node.kind() == Kind.SOAK && !state.mayBeOn()) {
            remarks.on(source, RemarkCode.SOAK_WHILE_OFF, name(source));
        } else if (source instanceof Energise && !state.hazardShown()) {
            remarks.on(source, RemarkCode.HAZARD_NOT_SHOWN);
        } else if ((source instanceof FitUnit || source instanceof RemoveUnit) && state.mayBeOn()) {
            remarks.on(source, RemarkCode.ENERGISED_WHILE_FITTING);
        } else if (source instanceof Erase erase) {
            erase(erase, state, remarks);
        } else if (source instanceof Derive derive) {
            derive(derive, state, remarks);
        } else if (source instanceof Step step) {
            strap(step, state, remarks);
        }
    }

    private static void derive(Derive derive, FlowState state, Remarks remarks) {
        Procedures.references(derive).stream().filter(each -> Written.thing(each.getValue()).isPresent()
                && !state.measured().contains(each.getValue()))
                .forEach(each -> remarks.on(each, RemarkCode.VALUE_NOT_MEASURED, each.getValue().getName()));
    }

    /** A strap ties a person to earth: never where something may be live, when the step begins or later in it. */
    private static void strap(Step step, FlowState state, Remarks remarks) {
        boolean live = state.mayBeOn() || step.getStatements().stream().anyMatch(Energise.class::isInstance);
        for (int i = 0; live && i < step.getHazards().size(); i++) {
            if (Written.thing(step.getHazards().get(i)).filter(Hazard::isStrap).isPresent()) {
                remarks.on(step, Literals.STEP__HAZARDS, i, RemarkCode.STRAP_WHILE_LIVE);
            }
        }
    }

    private static void erase(Erase erase, FlowState state, Remarks remarks) {
        if (isAttachedBefore(erase)) {
            return;
        }
        for (int i = 0; i < erase.getItems().size(); i++) {
            KeptItem item = erase.getItems().get(i);
            if (Written.thing(item).isPresent() && !state.recorded().contains(item.getName())) {
                remarks.on(erase, Literals.ERASE__ITEMS, i, RemarkCode.ERASED_BEFORE_RECORDED, item.getName());
            }
        }
    }

    /** A photo or a file of it, taken in the same step, is a record too. */
    private static boolean isAttachedBefore(Erase erase) {
        List<Statement> statements = ((Step) erase.eContainer()).getStatements();
        return statements.subList(0, statements.indexOf(erase)).stream().anyMatch(Attachment.class::isInstance);
    }

    private static String name(EObject source) {
        return source instanceof Named named ? String.valueOf(named.getName()) : "";
    }
}
