package org.benchwright.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.eclipse.emf.ecore.EObject;

/** Where things are in a procedure. */
public final class Procedures {

    private Procedures() {
    }

    /**
     * The nearest thing of a kind that holds something.
     *
     * @param <T>    the kind
     * @param inside something in a text, or nothing
     * @param kind   the kind to look for
     * @return the thing itself if it is of that kind, else the nearest one around it
     */
    public static <T> Optional<T> around(EObject inside, Class<T> kind) {
        for (EObject each = inside; each != null; each = each.eContainer()) {
            if (kind.isInstance(each)) {
                return Optional.of(kind.cast(each));
            }
        }
        return Optional.empty();
    }

    /**
     * The name by which the text refers to a block.
     *
     * @param block a stage, a soak, or a shared stage that is carried out
     * @return its name; that of the shared stage where it is carried out without a name of its own
     */
    public static Optional<String> name(Named block) {
        if (block.getName() == null && block instanceof CarryOut carryOut && carryOut.getShared() != null) {
            return Optional.ofNullable(carryOut.getShared().getName());
        }
        return Optional.ofNullable(block.getName());
    }

    /**
     * The steps of a block.
     *
     * @param block a stage or a soak
     * @return the steps in order; none for a soak
     */
    public static List<Step> steps(Block block) {
        return block instanceof Stage stage ? List.copyOf(stage.getSteps()) : List.of();
    }

    /**
     * Every step of a procedure.
     *
     * @param procedure a procedure
     * @return the steps of the stages in order, then those of make safe
     */
    public static List<Step> allSteps(Procedure procedure) {
        List<Step> steps = new ArrayList<>();
        procedure.getBlocks().forEach(block -> steps.addAll(steps(block)));
        if (procedure.getMakeSafe() != null) {
            steps.addAll(procedure.getMakeSafe().getSteps());
        }
        return List.copyOf(steps);
    }

    /**
     * Everything of a kind in the steps of a procedure, parts of grids included.
     *
     * @param <T>       the kind
     * @param procedure a procedure
     * @param kind      the kind to look for
     * @return what was found, in order
     */
    public static <T> List<T> statements(Procedure procedure, Class<T> kind) {
        return allSteps(procedure).stream().flatMap(step -> statements(step, kind)).toList();
    }

    /**
     * Everything of a kind in a step, parts of a grid included.
     *
     * @param <T>  the kind
     * @param step a step
     * @param kind the kind to look for
     * @return what was found, in order
     */
    public static <T> Stream<T> statements(Step step, Class<T> kind) {
        return step.getStatements().stream().flatMap(Procedures::withParts).filter(kind::isInstance).map(kind::cast);
    }

    /**
     * What a step measures and derives. Other steps may derive from it; what is read in a grid has its name there only.
     *
     * @param step a step
     * @return the values in order
     */
    public static List<Value> values(Step step) {
        return step.getStatements().stream().filter(Value.class::isInstance).map(Value.class::cast).toList();
    }

    /**
     * The values that others are reckoned from, by name.
     *
     * @param derive a derived value
     * @return every reference in its expression, in order
     */
    public static List<ValueReference> references(Derive derive) {
        List<ValueReference> references = new ArrayList<>();
        derive.eAllContents().forEachRemaining(each -> {
            if (each instanceof ValueReference reference) {
                references.add(reference);
            }
        });
        return references;
    }

    /**
     * What follows where a check fails.
     *
     * @param check a check
     * @return its own outcome, or the otherwise of the nearest block around it that has one; nothing where none has
     */
    public static Optional<Outcome> outcome(Check check) {
        return check.getOutcome() != null ? Optional.of(check.getOutcome()) : enclosingOtherwise(check);
    }

    /**
     * Whether somebody can refuse what a statement asks for, although it is no check.
     *
     * @param statement a statement
     * @return true for a release, for hands on the unit, and for what is erased or loaded
     */
    public static boolean canBeRefused(Statement statement) {
        return statement instanceof Release || statement instanceof FitUnit || statement instanceof RemoveUnit
                || statement instanceof Erase || statement instanceof Load;
    }

    /**
     * Whether a step asks nothing of anybody. Nothing is passed over in silence: it is confirmed as done, which can be refused.
     *
     * @param step a step
     * @return true where it only says what to do, what it reveals, what is reckoned from other steps, or where it goes on
     */
    public static boolean isConfirmedAsDone(Step step) {
        return step.getStatements().stream().allMatch(statement -> statement instanceof Conclude || statement instanceof GoTo
                || statement instanceof Branch || statement instanceof Derive || statement instanceof Reveals);
    }

    /**
     * The otherwise that holds for something.
     *
     * @param inside something in a procedure
     * @return the otherwise of the nearest step, stage, soak or procedure around it that has one
     */
    public static Optional<Outcome> enclosingOtherwise(EObject inside) {
        for (EObject each = inside; each != null; each = each.eContainer()) {
            if (each instanceof OutcomeScope scope && scope.getOtherwise() != null && !isPartOf(inside, scope.getOtherwise())) {
                return Optional.of(scope.getOtherwise());
            }
        }
        return Optional.empty();
    }

    private static boolean isPartOf(EObject inside, EObject whole) {
        for (EObject each = inside; each != null; each = each.eContainer()) {
            if (each == whole) {
                return true;
            }
        }
        return false;
    }

    private static Stream<EObject> withParts(Statement statement) {
        if (statement instanceof Grid grid) {
            Stream<EObject> parts = Stream.concat(grid.getAxes().stream(), Stream.ofNullable(grid.getJudgement()));
            return Stream.concat(Stream.of(grid), Stream.concat(parts, Stream.ofNullable(grid.getReading())));
        }
        return Stream.of(statement);
    }
}
