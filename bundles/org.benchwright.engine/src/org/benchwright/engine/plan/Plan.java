package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * An acceptance procedure compiled for one family: everything that carrying it out needs, with every reference resolved and every
 * outcome spelled out, so that the engine never consults the text.
 *
 * @param format            version of this structure; a verifier keeps the rules of all older ones
 * @param name              the procedure's name
 * @param title             the procedure's title as people read it
 * @param revision          1 or more
 * @param purpose           one sentence, may be empty
 * @param retestOf          the procedure whose stages this one repeats after a repair
 * @param provesBenchFor    how long a passed test of this procedure proves the bench (known-good-unit check)
 * @param family            the family that the unit belongs to
 * @param claim             what the soak is said to reveal
 * @param hazards           all hazards that stages and steps refer to
 * @param protectedItems    what the owner must not lose
 * @param instruments       what measures or stimulates, with the uncertainty that the procedure tolerates
 * @param preconditions     asked in this order before the first stage, and again when they have aged or after a loss of power
 * @param preconditionUnmet where an unmet precondition leads
 * @param stages            in the order written; stages on demand are entered only by a move
 * @param makeSafe          carried out before every end
 * @param end               the conclusion after the last stage
 * @param needsBenchProvedWithin how long ago the bench may have been proved when something is energised; empty where that is not asked
 */
public record Plan(int format, String name, String title, int revision, String purpose, Optional<String> retestOf,
        Optional<Duration> provesBenchFor, UnitFamily family, Optional<Claim> claim, List<Hazard> hazards,
        List<ProtectedItem> protectedItems, List<InstrumentSpec> instruments, List<Precondition> preconditions,
        Move preconditionUnmet, List<Stage> stages, WorkStage makeSafe, Move.Conclude end, Optional<Duration> needsBenchProvedWithin) {

    /** The structure's version written today. */
    public static final int CURRENT_FORMAT = 1;

    /** A procedure that does not ask whether the bench was proved. */
    public Plan(int format, String name, String title, int revision, String purpose, Optional<String> retestOf,
            Optional<Duration> provesBenchFor, UnitFamily family, Optional<Claim> claim, List<Hazard> hazards,
            List<ProtectedItem> protectedItems, List<InstrumentSpec> instruments, List<Precondition> preconditions,
            Move preconditionUnmet, List<Stage> stages, WorkStage makeSafe, Move.Conclude end) {
        this(format, name, title, revision, purpose, retestOf, provesBenchFor, family, claim, hazards, protectedItems, instruments,
                preconditions, preconditionUnmet, stages, makeSafe, end, Optional.empty());
    }

    public Plan {
        hazards = List.copyOf(hazards);
        protectedItems = List.copyOf(protectedItems);
        instruments = List.copyOf(instruments);
        preconditions = List.copyOf(preconditions);
        stages = List.copyOf(stages);
    }

    /** The hazard of that name. */
    public Optional<Hazard> hazard(String hazardName) {
        return hazards.stream().filter(h -> h.name().equals(hazardName)).findFirst();
    }

    /** The instrument of that name. */
    public Optional<InstrumentSpec> instrument(String instrumentName) {
        return instruments.stream().filter(i -> i.name().equals(instrumentName)).findFirst();
    }

    /** Every step, those of make safe last. */
    public Stream<Step> steps() {
        return Stream.concat(stages.stream(), Stream.of(makeSafe)).filter(WorkStage.class::isInstance)
                .flatMap(stage -> ((WorkStage) stage).steps().stream());
    }

    /** The index of the stage of that name. */
    public OptionalInt stageIndex(String stageName) {
        return IntStream.range(0, stages.size()).filter(i -> stages.get(i).name().equals(stageName)).findFirst();
    }
}
