package org.benchwright.language.internal.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.internal.ApprovalCheck;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.model.Conclude;
import org.benchwright.model.Decision;
import org.benchwright.model.Expectation;
import org.benchwright.model.GoTo;
import org.benchwright.model.Look;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Mark;
import org.benchwright.model.Precondition;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.benchwright.model.Timing;
import org.benchwright.model.Watch;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;

/** Clauses that are missing, or too many. */
final class ClauseFixes {

    private ClauseFixes() {
    }

    static List<Fix> time(Spot spot) {
        Optional<Expectation> expectation = spot.around(Expectation.class);
        if (expectation.isEmpty()) {
            return List.of();
        }
        List<INode> shown = Spot.nodes(expectation.get(), Literals.EXPECTATION__ALTERNATIVES);
        INode last = shown.get(shown.size() - 1);
        return lastMarkBefore(expectation.get()).map(mark -> "within 10 s of " + mark)
                .map(time -> Spot.one(FixText.ADD_TIME, time, spot.after(last, " " + time)))
                .orElseGet(() -> newMark(spot, expectation.get(), last, " within 10 s of "));
    }

    /** The time from which a deadline counts: of the last mark before it, or of a new one. */
    static List<Fix> mark(Spot spot) {
        Optional<Expectation> expectation = spot.around(Expectation.class);
        Optional<INode> amount = expectation.map(Expectation::getTiming).map(timing -> timing.getWithin() != null ? timing.getWithin()
                : timing.getFrom() != null ? timing.getFrom() : timing.getLasting()).map(Spot::node);
        if (amount.isEmpty()) {
            return List.of();
        }
        return lastMarkBefore(expectation.get()).map(mark -> Spot.one(FixText.INSERT, "of " + mark, spot.after(amount.get(), " of " + mark)))
                .orElseGet(() -> newMark(spot, expectation.get(), amount.get(), " of "));
    }

    private static Optional<String> lastMarkBefore(Expectation expectation) {
        return marksBefore(expectation).reduce((first, second) -> second).map(Mark::getName);
    }

    private static List<Fix> newMark(Spot spot, Expectation expectation, INode after, String words) {
        String text = spot.file().text().text();
        String name = "begun";
        for (int number = 2; text.contains("mark " + name + " "); number++) {
            name = "begun_" + number;
        }
        return Spot.one(FixText.ADD_MARK, spot.lineBefore(Spot.node(expectation), "mark " + name + " " + FixText.BEGIN.quoted()),
                spot.after(after, words + name));
    }

    /** Another mark, which is made before; or the same one, made before. */
    static List<Fix> earlierMark(Spot spot) {
        Optional<Expectation> expectation = spot.around(Expectation.class);
        Optional<Mark> meant = expectation.map(Expectation::getTiming).map(Timing::getMark);
        if (meant.isEmpty()) {
            return List.of();
        }
        List<Fix> fixes = new ArrayList<>();
        lastMarkBefore(expectation.get()).ifPresent(mark -> fixes.addAll(AmountFixes.by(spot, mark)));
        if (meant.get().eContainer() == expectation.get().eContainer()) {
            INode there = Spot.node(meant.get());
            fixes.addAll(Spot.one(FixText.MOVE_MARK, meant.get().getName(), spot.lineBefore(Spot.node(expectation.get()), Spot.text(there)),
                    spot.remove(there)));
        }
        return fixes;
    }

    private static Stream<Mark> marksBefore(Expectation expectation) {
        List<Statement> statements = ((Step) expectation.eContainer()).getStatements();
        return statements.subList(0, statements.indexOf(expectation)).stream().filter(Mark.class::isInstance).map(Mark.class::cast);
    }

    static List<Fix> reading(Spot spot) {
        return spot.around(Precondition.class).flatMap(each -> Spot.node(each, Literals.PRECONDITION__LABEL))
                .map(label -> Spot.one(FixText.INSERT, "reading", spot.after(label, " reading"))).orElse(List.of());
    }

    static List<Fix> revision(Spot spot) {
        return spot.around(Procedure.class).flatMap(each -> Spot.node(each, Literals.PROCEDURE__LABEL))
                .map(label -> Spot.one(FixText.INSERT, "revision 1", spot.after(label, " revision 1"))).orElse(List.of());
    }

    /** The first number above all that were approved: those below it are used up. */
    static List<Fix> nextRevision(Spot spot, ApprovedRevisions approved) {
        return spot.around(Procedure.class).flatMap(each -> ApprovalCheck.find(approved, each))
                .map(revision -> Integer.toString(revision.free()))
                .map(free -> Spot.one(FixText.REPLACE, "revision " + free, spot.edit(spot.remark().offset(), spot.remark().length(), free)))
                .orElse(List.of());
    }

    static List<Fix> whenUndecided(Spot spot) {
        String clause = "when undecided conclude undecided " + FixText.TOO_CLOSE.quoted();
        return spot.around(Decision.class).map(each -> Spot.one(FixText.INSERT, clause,
                spot.after(Spot.node(each), "\n" + spot.indentation(Spot.node(each).getOffset()) + "    " + clause))).orElse(List.of());
    }

    static List<Fix> bothWays(Spot spot) {
        return spot.around(Decision.class).flatMap(each -> Spot.node(each, Literals.DECISION__RULE))
                .map(rule -> Spot.one(FixText.DECIDE_BOTH_WAYS, spot.replace(rule, "guarded both ways"))).orElse(List.of());
    }

    static List<Fix> reason(Spot spot) {
        return spot.around(Conclude.class)
                .map(each -> Spot.one(FixText.INSERT, FixText.WHY.quoted(), spot.after(Spot.node(each), " " + FixText.WHY.quoted())))
                .orElse(List.of());
    }

    /** For everything that has no outcome of its own. */
    static List<Fix> otherwise(Spot spot) {
        Optional<Procedure> procedure = spot.around(Procedure.class).filter(each -> each.getOtherwise() == null && !each.getBlocks().isEmpty());
        return procedure.map(each -> Spot.one(FixText.ADD_OUTCOME, spot.lineBefore(Spot.node(each.getBlocks().get(0)),
                "otherwise conclude undecided " + FixText.NOT_CARRIED_OUT.quoted()))).orElse(List.of());
    }

    static List<Fix> bound(Spot spot) {
        String bound = ", at most 2, or conclude undecided " + FixText.NOT_SO_OFTEN.quoted();
        return spot.around(GoTo.class).map(each -> Spot.one(FixText.BOUND, spot.after(Spot.node(each), bound))).orElse(List.of());
    }

    static List<Fix> entry(Spot spot) {
        return spot.around(Step.class).map(step -> Spot.one(FixText.ADD_ENTRY, endOfStep(spot, step, "enter text " + FixText.WHAT_WAS_SEEN.quoted())))
                .orElse(List.of());
    }

    // ---- conclusions

    static List<Fix> conclusion(Spot spot) {
        Optional<Stage> stage = spot.around(Stage.class).filter(each -> !each.getSteps().isEmpty());
        if (stage.isPresent()) {
            Step last = stage.get().getSteps().get(stage.get().getSteps().size() - 1);
            return Spot.one(FixText.ADD_CONCLUSION, endOfStep(spot, last, "conclude undecided " + FixText.WHY.quoted()));
        }
        return spot.around(Procedure.class).filter(each -> each.getConclusion() == null)
                .map(each -> Spot.one(FixText.ADD_CONCLUSION, spot.beforeClosing(each, "    conclude accepted\n"))).orElse(List.of());
    }

    private static Edit endOfStep(Spot spot, Step step, String statement) {
        if (step.getOtherwise() != null) {
            INode otherwise = Spot.node(step.getOtherwise());
            int word = spot.file().text().text().lastIndexOf("otherwise", otherwise.getOffset());
            return spot.edit(word, 0, statement + "\n" + spot.indentation(word));
        }
        return spot.beforeClosing(step, statement + " ");
    }

    static List<Fix> makeSafe(Spot spot) {
        Optional<Procedure> procedure = spot.around(Procedure.class);
        if (procedure.isEmpty()) {
            return List.of();
        }
        String stage = "make safe " + FixText.MAKE_SAFE.quoted() + " {\n        step make_safe_off " + FixText.SWITCH_OFF.quoted()
                + " { isolates supply }\n    }\n    ";
        return Optional.ofNullable(procedure.get().getConclusion())
                .map(end -> Spot.one(FixText.ADD_MAKE_SAFE, spot.before(Spot.node(end), stage)))
                .orElseGet(() -> Spot.one(FixText.ADD_MAKE_SAFE, spot.beforeClosing(procedure.get(), "    " + stage.stripTrailing() + "\n")));
    }

    static List<Fix> notOnDemand(Spot spot) {
        Optional<INode> words = spot.around(Stage.class).flatMap(each -> Spot.node(each, Literals.STAGE__ON_DEMAND));
        return words.map(on -> {
            int end = spot.file().text().text().indexOf("demand", on.getOffset()) + "demand".length();
            return Spot.one(FixText.BE_REACHED, spot.remove(on.getOffset(), end));
        }).orElse(List.of());
    }

    static List<Fix> removeStatement(Spot spot) {
        return spot.around(Statement.class).map(each -> {
            INode node = Spot.node((EObject) each);
            return Spot.one(FixText.REMOVE, Spot.text(node).lines().findFirst().orElse(""), spot.remove(node));
        }).orElse(List.of());
    }

    // ---- soaks

    static List<Fix> witnessed(Spot spot) {
        return spot.around(Soak.class).map(Soak::getLength)
                .map(length -> Spot.one(FixText.INSERT, "witnessed", spot.after(Spot.node(length), " witnessed"))).orElse(List.of());
    }

    static List<Fix> look(Spot spot) {
        return spot.around(Soak.class).map(Soak::getLength).map(length -> observed(spot, "look every " + Spot.text(Spot.node(length))))
                .orElse(List.of());
    }

    static List<Fix> watch(Spot spot) {
        return observed(spot, "watch every 10 s, stop after 2 bad, silent after 3 missed");
    }

    /** A line behind what a soak keeps and its conditions. */
    private static List<Fix> observed(Spot spot, String line) {
        return spot.around(Soak.class).filter(each -> !each.getKeeps().isEmpty()).map(each -> {
            EObject last = each.getConditions().isEmpty() ? each.getKeeps().get(each.getKeeps().size() - 1)
                    : each.getConditions().get(each.getConditions().size() - 1);
            return Spot.one(FixText.INSERT, line, spot.after(Spot.node(last), "\n" + spot.indentation(Spot.node(last).getOffset()) + line));
        }).orElse(List.of());
    }

    /** In a stage, a shared one or make safe. */
    static List<Fix> step(Spot spot) {
        String text = spot.file().text().text();
        int number = 1;
        while (text.contains("step step_" + number + " ")) {
            number++;
        }
        String step = "step step_" + number + " " + FixText.WHAT_TO_DO.quoted() + " { enter text " + FixText.WHAT_WAS_SEEN.quoted() + " } ";
        return Stream.of(Stage.class, SharedStage.class, MakeSafe.class).flatMap(kind -> spot.around(kind).stream()).findFirst()
                .map(stage -> Spot.one(FixText.ADD_STEP, spot.beforeClosing(stage, step))).orElse(List.of());
    }

    static List<Fix> notUnless(Spot spot) {
        Optional<Look> look = spot.around(Look.class);
        return look.map(each -> {
            INode node = Spot.node(each);
            String text = spot.file().text().text();
            int comma = text.lastIndexOf(',', node.getEndOffset());
            return Spot.one(FixText.REMOVE, "unless watched", spot.edit(comma, node.getEndOffset() - comma, ""));
        }).orElse(List.of());
    }

    static List<Fix> stopAfter(Spot spot) {
        return spot.around(Watch.class).map(Watch::getEvery)
                .map(every -> Spot.one(FixText.INSERT, "stop after 2 bad", spot.after(Spot.node(every), ", stop after 2 bad"))).orElse(List.of());
    }
}
