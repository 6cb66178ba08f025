package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.require;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Action;

/** Whether something may be energised: where the procedure asks for it, only on a bench that was proved with a known-good unit. */
public final class ProvedBench {

    private ProvedBench() {
    }

    /**
     * How long ago the bench may have been proved; empty if nothing asks for it now. A rehearsal energises nothing, and making safe waits
     * for nobody.
     */
    public static Optional<Duration> owed(RunState s, Instant now) {
        if (s.plan().needsBenchProvedWithin().isEmpty() || s.opening().rehearsal() || s.makingSafe()) {
            return Optional.empty();
        }
        boolean asked = energising(s, Demands.of(s));
        return s.plan().needsBenchProvedWithin().filter(within -> asked && s.memory().benchProved().filter(proof -> proves(proof, within, now)).isEmpty());
    }

    /** Whether the answer switches on, or begins a step that does: its hazards are read with the hand at the switch already. */
    private static boolean energising(RunState s, Demand demand) {
        if (demand instanceof Demand.AcknowledgeHazard) {
            return !s.stepOpen() && s.atStep().stream().flatMap(step -> step.actions().stream()).anyMatch(Action.Energise.class::isInstance);
        }
        boolean byMark = demand instanceof Demand.PressMark && s.actionIndex() > 0
                && s.step().actions().get(s.actionIndex() - 1) instanceof Action.Energise;
        return byMark || demand instanceof Demand.Switch w && w.live();
    }

    /** Whether a proof still holds. */
    static boolean proves(Fact.BenchProved proof, Duration within, Instant now) {
        return !now.isBefore(proof.instant()) && !now.isAfter(proof.until()) && !now.isAfter(proof.instant().plus(within));
    }

    /** Before something is answered. */
    static void required(RunState s, Instant now) throws RefusedException {
        Optional<Duration> owed = owed(s, now);
        require(owed.isEmpty(), "refused.benchNotProved", owed.map(Durations::words).orElse(""));
    }

    /** Whether it was proved there is for whoever has that record. */
    static void told(RunState s, Fact.BenchProved proof, Instant now) throws RefusedException {
        Optional<Duration> within = s.plan().needsBenchProvedWithin();
        boolean fine = within.filter(time -> proves(proof, time, now)).isPresent() && proof.event() > 0 && !s.opening().rehearsal();
        require(fine, "refused.noBenchProof", proof.test());
    }
}
