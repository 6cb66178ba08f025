package org.benchwright.language.internal.flow;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.language.internal.expand.Expansion;
import org.benchwright.language.internal.flow.FlowNode.Kind;
import org.benchwright.model.BeginAgain;
import org.benchwright.model.Block;
import org.benchwright.model.Branch;
import org.benchwright.model.Check;
import org.benchwright.model.Conclude;
import org.benchwright.model.Decision;
import org.benchwright.model.GoTo;
import org.benchwright.model.Grid;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Outcome;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;

/**
 * Draws the ways through a procedure: from step to step, along every outcome, through make safe to the end. Names that lead
 * nowhere give no way; they are remarked on elsewhere.
 */
public final class FlowBuilder {

    private final List<FlowNode> nodes = new ArrayList<>();
    private final List<FlowEdge> edges = new ArrayList<>();
    private final Map<EObject, FlowNode> places = new IdentityHashMap<>();
    private final FlowNode begin;
    private final FlowNode over;

    private FlowBuilder(Procedure procedure) {
        begin = place(Kind.BEGIN, procedure);
        procedure.getBlocks().forEach(this::place);
        if (procedure.getMakeSafe() != null) {
            place(Kind.MAKE_SAFE, procedure.getMakeSafe());
            procedure.getMakeSafe().getSteps().forEach(this::place);
        }
        over = node(Kind.OVER, procedure);
    }

    /** The graph of a procedure, its shared stages in their places. */
    public static FlowGraph build(Procedure procedure) {
        Procedure expanded = Expansion.of(procedure).procedure();
        FlowBuilder builder = new FlowBuilder(expanded);
        builder.procedure(expanded);
        return new FlowGraph(builder.begin, builder.nodes, builder.edges);
    }

    private FlowNode node(Kind kind, EObject source) {
        FlowNode node = new FlowNode(nodes.size(), kind, source);
        nodes.add(node);
        return node;
    }

    private FlowNode place(Kind kind, EObject source) {
        FlowNode node = node(kind, source);
        places.put(source, node);
        return node;
    }

    private void place(Block block) {
        place(block instanceof Soak ? Kind.SOAK : Kind.STAGE, block);
        Procedures.steps(block).forEach(this::place);
    }

    private void place(Step step) {
        place(Kind.STEP, step);
        step.getStatements().forEach(statement -> place(Kind.STATEMENT, statement));
    }

    private void way(FlowNode from, FlowNode to, EObject cause) {
        edges.add(new FlowEdge(from, to, cause, false));
    }

    private void procedure(Procedure procedure) {
        FlowNode end = procedure.getConclusion() == null ? node(Kind.LOST, procedure) : concluded(procedure.getConclusion());
        FlowNode next = end;
        List<Block> blocks = procedure.getBlocks();
        for (int i = blocks.size() - 1; i >= 0; i--) {
            Block block = blocks.get(i);
            boolean onDemand = block instanceof Stage stage && stage.isOnDemand();
            block(block, onDemand ? node(Kind.LOST, block) : next);
            next = onDemand ? next : places.get(block);
        }
        way(begin, next, procedure);
        if (!procedure.getPreconditions().isEmpty()) {
            unmet(procedure);
        }
        if (procedure.getMakeSafe() != null) {
            MakeSafe makeSafe = procedure.getMakeSafe();
            steps(places.get(makeSafe), makeSafe.getSteps(), over);
        }
    }

    /** A precondition that is not met ends the test before anything is begun, whatever else a failed check would lead to. */
    private void unmet(Procedure procedure) {
        Procedures.enclosingOtherwise(procedure)
                .ifPresent(otherwise -> way(begin, otherwise instanceof Conclude end ? concluded(end) : ended(), otherwise));
    }

    private void block(Block block, FlowNode next) {
        if (block instanceof Soak soak) {
            soak(soak, next);
        } else {
            if (block instanceof Stage stage && stage.getOnly() != null) {
                way(places.get(block), next, stage.getOnly());
            }
            steps(places.get(block), Procedures.steps(block), next);
        }
    }

    private void steps(FlowNode entry, List<Step> steps, FlowNode next) {
        way(entry, steps.isEmpty() ? next : places.get(steps.get(0)), entry.source());
        for (int i = 0; i < steps.size(); i++) {
            statements(steps.get(i), i + 1 < steps.size() ? places.get(steps.get(i + 1)) : next);
        }
    }

    private void statements(Step step, FlowNode next) {
        List<Statement> statements = step.getStatements();
        if (step.getOnly() != null) {
            way(places.get(step), next, step.getOnly());
        }
        if (Procedures.isConfirmedAsDone(step)) {
            otherwise(places.get(step), step, next);
        }
        way(places.get(step), statements.isEmpty() ? next : places.get(statements.get(0)), step);
        for (int i = 0; i < statements.size(); i++) {
            statement(statements.get(i), i + 1 < statements.size() ? places.get(statements.get(i + 1)) : next);
        }
    }

    private void statement(Statement statement, FlowNode next) {
        FlowNode here = places.get(statement);
        if (statement instanceof Conclude || statement instanceof GoTo) {
            outcome(here, (Outcome) statement, next);
            return;
        }
        way(here, next, statement);
        if (statement instanceof Branch branch) {
            Optional.ofNullable(branch.getTarget()).ifPresent(target -> outcome(here, target, next));
        } else if (statement instanceof Grid grid) {
            Optional.ofNullable(grid.getJudgement()).ifPresent(judgement -> fails(here, judgement, next));
        } else if (statement instanceof Check check) {
            fails(here, check, next);
        } else if (Procedures.canBeRefused(statement)) {
            otherwise(here, statement, next);
        }
    }

    private void fails(FlowNode here, Check check, FlowNode next) {
        Procedures.outcome(check).ifPresent(outcome -> outcome(here, outcome, next));
        if (check instanceof Decision decision && decision.getUndecided() != null) {
            outcome(here, decision.getUndecided(), next);
        }
    }

    private void soak(Soak soak, FlowNode next) {
        FlowNode here = places.get(soak);
        way(here, next, soak);
        soak.getStops().forEach(stop -> outcomeOrOtherwise(here, stop.getOutcome(), soak, next));
        if (soak.getStops().stream().allMatch(stop -> stop.isOutsideConditions())) {
            otherwise(here, soak, next);
        }
        if (soak.getGap() != null) {
            outcomeOrOtherwise(here, soak.getGap().getOutcome(), soak, next);
        }
    }

    private void outcomeOrOtherwise(FlowNode here, Outcome outcome, EObject inside, FlowNode next) {
        if (outcome == null) {
            otherwise(here, inside, next);
        } else {
            outcome(here, outcome, next);
        }
    }

    private void otherwise(FlowNode here, EObject inside, FlowNode next) {
        Procedures.enclosingOtherwise(inside).ifPresent(outcome -> outcome(here, outcome, next));
    }

    private void outcome(FlowNode here, Outcome outcome, FlowNode next) {
        if (outcome instanceof Conclude end) {
            way(here, concluded(end), end);
        } else if (outcome instanceof GoTo goTo) {
            boolean bounded = goTo.getTimes() != null;
            Optional.ofNullable(places.get(goTo.getTarget())).filter(to -> !isMakingSafe(here.source()) || isMakingSafe(to.source()))
                    .ifPresent(to -> edges.add(new FlowEdge(here, to, goTo, bounded)));
            Optional.ofNullable(goTo.getExhausted()).ifPresent(exhausted -> outcome(here, exhausted, next));
        } else if (outcome instanceof BeginAgain again) {
            edges.add(new FlowEdge(here, here, again, true));
            outcomeOrOtherwise(here, again.getExhausted(), here.source(), next);
        } else if (outcome instanceof Release release) {
            way(here, next, release);
            if (!isMakingSafe(here.source())) {
                way(here, ended(), release);
            }
        }
    }

    /** Where a test goes that ends undecided without the text saying so. */
    private FlowNode ended() {
        return nodes.stream().filter(node -> node.kind() == Kind.MAKE_SAFE).findFirst().orElse(over);
    }

    private static boolean isMakingSafe(EObject place) {
        return Procedures.around(place, MakeSafe.class).isPresent();
    }

    /** Where a verdict is reached: make safe follows, or the bench is left as it is where there is none. */
    private FlowNode concluded(Conclude end) {
        FlowNode known = places.get(end);
        if (known != null && known.kind() == Kind.CONCLUDED) {
            return known;
        }
        FlowNode node = node(Kind.CONCLUDED, end);
        if (known == null) {
            places.put(end, node);
        }
        Optional<FlowNode> makeSafe = isMakingSafe(end) ? Optional.empty() : Procedures.around(end, Procedure.class)
                .map(Procedure::getMakeSafe).map(places::get);
        way(node, makeSafe.orElse(over), end);
        return node;
    }
}
