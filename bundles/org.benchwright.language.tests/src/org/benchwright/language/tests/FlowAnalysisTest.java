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

import org.benchwright.language.Checked;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.internal.flow.FlowAnalysis;
import org.benchwright.language.internal.flow.FlowBuilder;
import org.benchwright.language.internal.flow.FlowEdge;
import org.benchwright.language.internal.flow.FlowGraph;
import org.benchwright.language.internal.flow.FlowNode;
import org.benchwright.language.internal.flow.FlowState;
import org.benchwright.model.Energise;
import org.benchwright.model.Isolate;
import org.benchwright.model.LogEntry;
import org.benchwright.model.Procedure;
import org.benchwright.model.Step;
import org.junit.jupiter.api.Test;

/** The analysis agrees with a slow and obvious one, which walks every way and keeps every single state. */
class FlowAnalysisTest {

    /** What is so on one way. */
    private record Concrete(boolean on, boolean shown, Set<String> recorded) {
    }

    private static final String FAMILY = """
            family jay "Jay" { lamp ok green "Health" keeps a "A" by cell keeps b "B" by cell stop stays until "restarted" }
            """;

    @Test
    void theFixpointIsTheJoinOfAllWays() {
        Random random = new Random(20);
        int live = 0;
        for (int i = 0; i < 300; i++) {
            Procedure procedure = procedure(random);
            FlowGraph graph = FlowBuilder.build(procedure);
            FlowAnalysis analysis = new FlowAnalysis(graph);
            Map<FlowNode, Set<Concrete>> walked = walk(graph);
            for (FlowNode node : graph.nodes()) {
                assertEquals(joined(walked.getOrDefault(node, Set.of())), analysis.before(node));
            }
            live += walked.values().stream().flatMap(Set::stream).anyMatch(Concrete::on) ? 1 : 0;
        }
        assertTrue(live > 100, "too few of the procedures switch anything on: " + live);
    }

    private static Optional<FlowState> joined(Set<Concrete> states) {
        if (states.isEmpty()) {
            return Optional.empty();
        }
        Set<String> always = new TreeSet<>(Set.of("a", "b"));
        states.forEach(state -> always.retainAll(state.recorded()));
        return Optional.of(new FlowState(states.stream().anyMatch(Concrete::on), states.stream().allMatch(Concrete::shown), always, Set.of()));
    }

    private static Map<FlowNode, Set<Concrete>> walk(FlowGraph graph) {
        record Visit(FlowNode node, Concrete state) {
        }
        Map<FlowNode, Set<Concrete>> seen = new HashMap<>();
        Deque<Visit> open = new ArrayDeque<>();
        open.add(new Visit(graph.begin(), new Concrete(false, false, Set.of())));
        while (!open.isEmpty()) {
            Visit visit = open.remove();
            if (seen.computeIfAbsent(visit.node(), node -> new HashSet<>()).add(visit.state())) {
                Concrete after = after(visit.node(), visit.state());
                for (FlowEdge edge : graph.from(visit.node())) {
                    open.add(new Visit(edge.to(), after));
                }
            }
        }
        return seen;
    }

    private static Concrete after(FlowNode node, Concrete state) {
        if (node.source() instanceof Energise) {
            return new Concrete(true, state.shown(), state.recorded());
        } else if (node.source() instanceof Isolate) {
            return new Concrete(false, state.shown(), state.recorded());
        } else if (node.source() instanceof LogEntry entry) {
            Set<String> more = new TreeSet<>(state.recorded());
            more.add(entry.getItem().getName());
            return new Concrete(state.on(), state.shown(), more);
        } else if (node.source() instanceof Step step && step.getHazards().stream().anyMatch(hazard -> hazard.getName().equals("mains"))) {
            return new Concrete(state.on(), true, state.recorded());
        }
        return state;
    }

    private static Procedure procedure(Random random) {
        int stages = 1 + random.nextInt(4);
        StringBuilder text = new StringBuilder("""
                procedure p "P" revision 1 { applies to jay
                hazard mains danger "h" can "c" so "s"
                hazard static notice "h" can "c" so "s"
                """);
        if (random.nextBoolean()) {
            text.append("precondition ready \"Ready\" otherwise conclude undecided \"No.\"\n");
        }
        for (int stage = 0; stage < stages; stage++) {
            text.append("stage st").append(stage).append(" \"S\"").append(random.nextInt(4) == 0 ? " on demand" : "").append(" {\n");
            for (int step = 0; step <= random.nextInt(3); step++) {
                text.append("step s").append(stage).append('_').append(step).append(" \"s\"").append(hazard(random)).append(" {");
                for (int statement = 0; statement < random.nextInt(5); statement++) {
                    text.append(' ').append(statement(random, stages));
                }
                text.append(random.nextInt(3) == 0 ? " otherwise " + outcome(random, stages) : "").append(" }\n");
            }
            text.append("}\n");
        }
        text.append("make safe \"M\" { step off \"o\" { ").append(random.nextBoolean() ? "isolates supply" : "wait 1 s").append(" } }\n");
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
