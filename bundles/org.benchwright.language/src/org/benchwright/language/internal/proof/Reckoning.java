package org.benchwright.language.internal.proof;

import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.SoakProof;

/** Puts together all that a procedure proves. */
public final class Reckoning {

    /** So many paths are listed. */
    public static final int LISTED = 60;

    private Reckoning() {
    }

    /**
     * Reckons.
     *
     * @throws CancellationException if cancelled
     */
    public static ProcedureProof of(Provable provable, RiskMemory memory, Cancellation cancellation) {
        Plan plan = provable.plan();
        Walk walk = new Walk(Spots.of(plan));
        Walk safe = new Walk(Spots.ofMakeSafe(plan));
        Exploration explored = new Exploration(walk, cancellation);
        Exploration exploredSafe = new Exploration(safe, cancellation);
        Set<Integer> reached = reached(walk, explored);
        List<SoakProof> soaks = plan.stages().stream().filter(SoakStage.class::isInstance).map(SoakStage.class::cast)
                .map(soak -> SoakProof.of(soak, plan.family().stopStays(), plan.claim())).toList();
        return new ProcedureProof(plan.name(), plan.title(), plan.revision(),
                Drawing.of(walk.spots(), safe.spots(), reached, provable.passages()), Paths.of(walk, explored, LISTED),
                TimeReckoning.of(plan, walk, explored, safe, exploredSafe), FaultMatching.of(plan, walk.spots(), reached),
                RiskReckoning.of(plan, memory, cancellation), soaks);
    }

    /** Exactly, where everything was explored; else all that some way leads to. */
    private static Set<Integer> reached(Walk walk, Exploration explored) {
        return explored.isComplete() ? explored.order().stream().map(Walk.State::place).collect(Collectors.toSet())
                : walk.spots().reachable().get(0).stream().boxed().collect(Collectors.toSet());
    }
}
