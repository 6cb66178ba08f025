package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Checked;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.benchwright.language.internal.flow.FlowAnalysis;
import org.benchwright.language.internal.flow.FlowBuilder;
import org.benchwright.language.internal.flow.FlowEdge;
import org.benchwright.language.internal.flow.FlowGraph;
import org.benchwright.language.internal.flow.FlowNode;
import org.benchwright.language.internal.flow.FlowState;
import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.Provable;
import org.benchwright.model.Derive;
import org.benchwright.model.Energise;
import org.benchwright.model.Guard;
import org.benchwright.model.Isolate;
import org.benchwright.model.LogEntry;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.benchwright.model.Value;
import org.benchwright.model.ValueReference;
import org.junit.jupiter.api.Test;

/**
 * The analysis agrees with a slow and obvious one, which walks every way and keeps every single state; and the ways of a
 * text are those of the plan
 * that is carried out.
 */
class FlowAnalysisTest {

    /** What is so on one way. */
    private record Concrete(boolean on, boolean shown, Set<String> recorded, Set<Value> measured) {
    }

    private static final String FAMILY = """
            family jay "Jay" { lamp ok green "Health" keeps a "A" by cell keeps b "B" by cell stop stays until "restarted" }
            """;

    @Test
    void theFixpointIsTheJoinOfAllWays() {
        Random random = new Random(20);
        int live = 0;
        int measured = 0;
        for (int i = 0; i < 300; i++) {
            Procedure procedure = procedure(random);
            FlowGraph graph = FlowBuilder.build(procedure);
            FlowAnalysis analysis = new FlowAnalysis(graph);
            Map<FlowNode, Set<Concrete>> walked = walk(graph);
            Set<Value> needed = Procedures.statements(procedure, Derive.class).stream()
                    .flatMap(derive -> Procedures.references(derive).stream())
                    .map(ValueReference::getValue).collect(Collectors.toSet());
            for (FlowNode node : graph.nodes()) {
                assertEquals(joined(walked.getOrDefault(node, Set.of()), needed), analysis.before(node));
            }
            live += walked.values().stream().flatMap(Set::stream).anyMatch(Concrete::on) ? 1 : 0;
            measured += walked.values().stream().flatMap(Set::stream).anyMatch(state -> !state.measured().isEmpty())
                    && !needed.isEmpty() ? 1 : 0;
        }
        assertTrue(live > 100, "too few of the procedures switch anything on: " + live);
        assertTrue(measured > 100, "too few of the procedures derive anything: " + measured);
    }

    @Test
    void theWaysOfATextAreThoseOfItsPlan() {
        Random random = new Random(21);
        int live = 0;
        int unreached = 0;
        for (int i = 0; i < 200; i++) {
            Procedure procedure = procedure(random);
            FlowGraph graph = FlowBuilder.build(procedure);
            FlowAnalysis analysis = new FlowAnalysis(graph);
            FlowDiagram plan = new Provable(PlanCompiler.compile(procedure), Map.of()).prove(Cancellation.never()).flow();
            // Where the text says nothing, which is an error, only the plan goes on: undecided.
            boolean lost = graph.nodes(FlowNode.Kind.LOST).stream().anyMatch(node -> analysis.before(node).isPresent());
            for (FlowNode node : graph.nodes(FlowNode.Kind.STEP)) {
                Step step = (Step) node.source();
                FlowPlace place = plan.places().stream().filter(each -> each.name().equals(step.getName())).findFirst()
                        .orElseThrow();
                Optional<FlowState> before = analysis.before(node);
                boolean safe = place.kind() == FlowPlace.Kind.SAFE_STEP;
                if (before.isPresent() && !(safe && lost)) {
                    assertEquals(before.get().mayBeOn()
                            && !switchesOnFirst(step), place.marks().contains(FlowPlace.Mark.LIVE), step.getName());
                }
                assertEquals(before.isEmpty() && !safe, place.marks().contains(FlowPlace.Mark.UNREACHABLE), step.getName());
                live += place.marks().contains(FlowPlace.Mark.LIVE) ? 1 : 0;
                unreached += place.marks().contains(FlowPlace.Mark.UNREACHABLE) ? 1 : 0;
            }
        }
        assertTrue(live > 100 && unreached > 50, "too few of the steps are live, or are not reached: " + live + ", "
                + unreached);
    }

    private static boolean switchesOnFirst(Step step) {
        return step.getStatements().stream().filter(each -> each instanceof Energise || each instanceof Isolate).findFirst()
                .filter(Energise.class::isInstance)
                .isPresent();
    }

    private static Optional<FlowState> joined(Set<Concrete> states, Set<Value> needed) {
        if (states.isEmpty()) {
            return Optional.empty();
        }
        Set<String> always = new TreeSet<>(Set.of("a", "b"));
        states.forEach(state -> always.retainAll(state.recorded()));
        Set<Value> measured = new HashSet<>(needed);
        states.forEach(state -> measured.retainAll(state.measured()));
        return Optional.of(new FlowState(states.stream().anyMatch(Concrete::on), states.stream()
                .allMatch(Concrete::shown), always, measured));
    }

    private static Map<FlowNode, Set<Concrete>> walk(FlowGraph graph) {
        record Visit(FlowNode node, Concrete state) {
        }
        Map<FlowNode, Set<Concrete>> seen = new HashMap<>();
        Deque<Visit> open = new ArrayDeque<>();
        open.add(new Visit(graph.begin(), new Concrete(false, false, Set.of(), Set.of())));
        while (!open.isEmpty()) {
            Visit visit = open.remove();
            if (seen.computeIfAbsent(visit.node(), node -> new HashSet<>()).add(visit.state())) {
                Concrete after = after(visit.node(), visit.state());
                for (FlowEdge edge : graph.from(visit.node())) {
                    // Whoever passes a step by has not read it.
                    open.add(new Visit(edge.to(), edge.cause() instanceof Guard ? visit.state() : after));
                }
            }
        }
        return seen;
    }

    private static Concrete after(FlowNode node, Concrete state) {
        if (node.source() instanceof Energise) {
            return new Concrete(true, state.shown(), state.recorded(), state.measured());
        } else if (node.source() instanceof Isolate) {
            return new Concrete(false, state.shown(), state.recorded(), state.measured());
        } else if (node.source() instanceof LogEntry entry) {
            Set<String> more = new TreeSet<>(state.recorded());
            more.add(entry.getItem().getName());
            return new Concrete(state.on(), state.shown(), more, state.measured());
        } else if (node.source() instanceof Step step
                && step.getHazards().stream().anyMatch(hazard -> hazard.getName().equals("mains"))) {
            return new Concrete(state.on(), true, state.recorded(), state.measured());
        } else if (node.source() instanceof Value value) {
            Set<Value> more = new HashSet<>(state.measured());
            more.add(value);
            return new Concrete(state.on(), state.shown(), state.recorded(), more);
        }
        return state;
    }

    private static Procedure procedure(Random random) {
        int stages = 1 + random.nextInt(4);
        StringBuilder text = new StringBuilder("""
                procedure p "P" revision 1 { applies to jay
                hazard mains danger "h" can "c" so "s"
                hazard static notice "h" can "c" so "s"
                instrument meter "M" reads V up to 9 V
                """);
        text.append(random.nextBoolean() ? "precondition ready \"Ready\" " : "").append("otherwise ")
                .append(outcome(random, stages)).append('\n');
        for (int stage = 0; stage < stages; stage++) {
            text.append("stage st").append(stage).append(" \"S\"").append(random.nextInt(4) == 0 ? " on demand" : "")
                    .append(" {\n");
            for (int step = 0; step <= random.nextInt(3); step++) {
                text.append("step s").append(stage).append('_').append(step).append(" \"s\"")
                        .append(random.nextInt(6) == 0 ? " only if seen \"x\"" : "")
                        .append(hazard(random)).append(" {");
                for (int statement = 0; statement < random.nextInt(5); statement++) {
                    text.append(' ').append(statement(random, stages));
                }
                String value = stage + "_" + step;
                text.append(step == 0 ? " measure v" + value + " with meter, limits 0 .. 5 V" : "");
                text.append(random.nextInt(3) == 0
                        ? " derive d" + value + " as 1 V + v" + random.nextInt(stages) + "_0, limits 0 .. 9 V" : "");
                text.append(random.nextInt(3) == 0 ? " otherwise " + outcome(random, stages) : "").append(" }\n");
            }
            text.append("}\n");
        }
        text.append("make safe \"M\" { step off \"o\" { ").append(random.nextBoolean() ? "isolates supply" : "wait 1 s")
                .append(" } }\n");
        text.append(random.nextInt(5) == 0 ? "}" : "conclude accepted }");
        Checked checked = Bench.LANGUAGE.checkTexts(List.of(new SourceText(Bench.PROCEDURE_FILE, FAMILY + text)));
        assertEquals(List.of(), checked.remarks().stream().filter(remark -> remark.code() == RemarkCode.SYNTAX).toList());
        return checked.procedures().get(0);
    }

    private static String hazard(Random random) {
        return List.of("", " with hazard mains", " with hazard static").get(random.nextInt(3));
    }

    private static String statement(Random random, int stages) {
        return switch (random.nextInt(8)) {
            case 0, 1 -> "energises supply";
            case 2 -> "isolates supply";
            case 3 -> "enter a";
            case 4 -> "enter b as found";
            case 5 -> "confirm \"c\" or " + outcome(random, stages);
            case 6 -> random.nextInt(3) == 0 ? outcome(random, stages) : "confirm \"c\"";
            default -> "fits unit";
        };
    }

    private static String outcome(Random random, int stages) {
        String target = "st" + random.nextInt(stages);
        return switch (random.nextInt(4)) {
            case 0 -> "conclude rejected \"r\"";
            case 1 -> "go to " + target;
            case 2 -> "go to " + target + ", at most 2, or conclude undecided \"u\"";
            default -> "release by supervisor \"s\"";
        };
    }
}
