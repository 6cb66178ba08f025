package org.benchwright.language.internal.compile;

import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Move;
import org.benchwright.model.BeginAgain;
import org.benchwright.model.Block;
import org.benchwright.model.Conclude;
import org.benchwright.model.Destination;
import org.benchwright.model.GoTo;
import org.benchwright.model.Outcome;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.Releaser;
import org.benchwright.model.Stage;
import org.eclipse.emf.ecore.EObject;

/** Outcomes as written, as moves. */
final class Moves {

    /** Where nothing is written: nobody can tell. */
    static final Move.Conclude UNDECIDED = new Move.Conclude(Verdict.UNDECIDED, "");

    private Moves() {
    }

    /** The outcome written at the check itself, else the nearest {@code otherwise} around it, else undecided. */
    static Move of(Outcome written, EObject at) {
        return Optional.ofNullable(written).or(() -> Procedures.enclosingOtherwise(at)).map(Moves::move).orElse(UNDECIDED);
    }

    static Move move(Outcome written) {
        if (written instanceof Conclude conclude) {
            return conclude(conclude);
        } else if (written instanceof GoTo goTo) {
            return goTo(goTo);
        } else if (written instanceof Release release) {
            return new Move.ReleaseBy(role(release.getBy()), release.getText());
        }
        BeginAgain again = (BeginAgain) written;
        return new Move.BeginAgain(new Move.Bound(again.getTimes(), of(again.getExhausted(), again)));
    }

    static Move.Conclude conclude(Conclude written) {
        return new Move.Conclude(written.getVerdict(), FamilyCompiler.text(written.getReason()));
    }

    static Move.GoTo goTo(GoTo written) {
        Optional<Move.Bound> bound = Optional.ofNullable(written.getTimes())
                .map(times -> new Move.Bound(times, of(written.getExhausted(), written)));
        Destination target = written.getTarget();
        if (target instanceof Stage stage) {
            return new Move.GoTo(stage.getName(), stage.getSteps().get(0).getName(), bound);
        } else if (target instanceof Block soak) {
            return new Move.GoTo(soak.getName(), "", bound);
        }
        String stage = target.eContainer() instanceof Block around ? around.getName() : PlanCompiler.MAKE_SAFE;
        return new Move.GoTo(stage, target.getName(), bound);
    }

    static Role role(Releaser written) {
        return written == Releaser.SUPERVISOR ? Role.SUPERVISOR : Role.SECOND_PERSON;
    }
}
