package org.benchwright.engine.tests;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.WorkStage;

/** Whether an {@link ObviousModel} may switch something on: only on a bench that was proved, where its plan asks for that. */
final class ObviousProof {

    private final ObviousModel test;

    private ObviousProof(ObviousModel test) {
        this.test = test;
    }

    /** How long ago the bench may have been proved, where the answer that is asked for now has to wait for it. */
    static Optional<Duration> owed(ObviousModel test, Instant now) {
        boolean waits = new ObviousProof(test).atTheSwitch() && !test.makingSafe() && !test.rehearsal;
        boolean proved = test.proof.filter(proof -> holds(test, proof, now)).isPresent();
        return waits && !proved ? test.plan.needsBenchProvedWithin() : Optional.empty();
    }

    /** Whether the test takes that as a proof. */
    static boolean taken(ObviousModel test, Fact.BenchProved proof, Instant now) {
        return test.ended.isEmpty() && !test.rehearsal && holds(test, proof, now);
    }

    private static boolean holds(ObviousModel test, Fact.BenchProved proof, Instant now) {
        if (test.plan.needsBenchProvedWithin().isEmpty()) {
            return false;
        }
        Duration age = Duration.between(proof.instant(), now);
        return !age.isNegative() && age.compareTo(test.plan.needsBenchProvedWithin().get()) <= 0 && !proof.until().isBefore(now);
    }

    /** The next answer closes a switch, comes as it closes, or is about the danger behind it. */
    private boolean atTheSwitch() {
        String asked = ObviousDemand.of(test);
        if (!(test.here() instanceof WorkStage) || test.ended.isPresent()) {
            return false;
        } else if (!test.inStep) {
            return asked.startsWith("hazard.") && test.actions().stream().anyMatch(ObviousProof::closes);
        }
        List<Action> actions = test.actions();
        Action current = test.current();
        boolean mark = current instanceof Action.Mark && asked.equals(test.stepName() + "." + current.id());
        return asked.equals(test.stepName() + "." + (current instanceof Action.Energise e ? e.item() : "") + ".on")
                || mark && test.action > 0 && closes(actions.get(test.action - 1));
    }

    private static boolean closes(Action action) {
        return action instanceof Action.Energise;
    }
}
