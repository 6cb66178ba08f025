package org.benchwright.language.internal.compile;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.ProtectedItem;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.language.internal.expand.Expanded;
import org.benchwright.language.internal.expand.Expansion;
import org.benchwright.model.Block;
import org.benchwright.model.Gap;
import org.benchwright.model.Indication;
import org.benchwright.model.Instrument;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Look;
import org.benchwright.model.ModeIndication;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.Soak;

/**
 * Compiles a procedure that has no errors to its plan. What the plan says follows from the text alone: compiling the same text again
 * gives an equal plan.
 */
public final class PlanCompiler {

    /** The name of make safe in a plan; the language gives it none. */
    public static final String MAKE_SAFE = "make_safe";

    private final Procedure procedure;
    private final Signals signals;
    private final List<KeptItem> protectedItems;

    private PlanCompiler(Procedure procedure) {
        this.procedure = procedure;
        signals = new Signals(procedure.getFamily());
        protectedItems = procedure.getProtections().stream().flatMap(p -> p.getItems().stream()).toList();
    }

    /**
     * The plan of a procedure.
     *
     * @param procedure without errors, references resolved
     */
    public static Plan compile(Procedure procedure) {
        return compile(Expansion.of(procedure));
    }

    /**
     * The plan of a procedure with its shared stages in their places.
     *
     * @param expanded without errors, references resolved
     */
    public static Plan compile(Expanded expanded) {
        return new PlanCompiler(expanded.procedure()).plan();
    }

    private Plan plan() {
        Procedure p = procedure;
        return new Plan(Plan.CURRENT_FORMAT, p.getName(), p.getLabel(), p.getRevision(), FamilyCompiler.text(p.getPurpose()),
                Optional.ofNullable(p.getRetest()).map(r -> r.getProcedure().getName()),
                Optional.ofNullable(p.getBenchProof()).map(b -> Amounts.duration(b.getValidity())), FamilyCompiler.compile(p.getFamily()),
                Optional.ofNullable(p.getClaim()).map(c -> new Claim(Amounts.duration(c.getInterval()), Amounts.share(c.getLevel()))),
                p.getHazards().stream().map(PlanCompiler::hazard).toList(),
                protectedItems.stream().map(k -> new ProtectedItem(k.getName(), k.getLabel())).toList(),
                p.getInstruments().stream().map(PlanCompiler::instrument).toList(),
                p.getPreconditions().stream().map(PlanCompiler::precondition).toList(), preconditionUnmet(),
                p.getBlocks().stream().map(this::stage).toList(), makeSafe(), end(),
                Optional.ofNullable(p.getBenchNeed()).map(n -> Amounts.duration(n.getWithin())));
    }

    private static Hazard hazard(org.benchwright.model.Hazard h) {
        return new Hazard(h.getName(), h.getSignal(), h.getWhat(), FamilyCompiler.text(h.getConsequence()),
                FamilyCompiler.text(h.getAvoidance()));
    }

    private static InstrumentSpec instrument(Instrument i) {
        return new InstrumentSpec(i.getName(), i.getLabel(), StepCompiler.range(i),
                Optional.ofNullable(i.getUncertainty()).map(Amounts::quantity),
                Optional.ofNullable(i.getCoverage()).orElse(InstrumentSpec.USUAL_COVERAGE),
                Optional.of(FamilyCompiler.words(i.getUse(), i.getUnit(), i.getCurrent())),
                i.isRefusedPastDue() ? Optional.of(InstrumentSpec.PastDue.REFUSED) : Optional.empty());
    }

    private static Precondition precondition(org.benchwright.model.Precondition p) {
        return new Precondition(p.getName(), p.getLabel(), Amounts.optionalDuration(p.getValidity()),
                Optional.ofNullable(p.getTextEntry()), Optional.ofNullable(p.getLimits()).map(Amounts::limits),
                Optional.ofNullable(p.getInstrument()).map(Named::getName));
    }

    /** Where nothing is said, no way leads there, or the text has an error; whatever came there all the same accepts nothing. */
    private Move.Conclude end() {
        return procedure.getConclusion() == null ? Moves.UNDECIDED : Moves.conclude(procedure.getConclusion());
    }

    /** An unmet precondition ends the test; a procedure that says otherwise nowhere leaves it undecided. */
    private Move preconditionUnmet() {
        Move written = Moves.of(null, procedure);
        return written instanceof Move.Conclude ? written : Moves.UNDECIDED;
    }

    // ---- stages

    private Stage stage(Block block) {
        if (block instanceof Soak soak) {
            return soak(soak);
        }
        org.benchwright.model.Stage stage = (org.benchwright.model.Stage) block;
        return new WorkStage(stage.getName(), stage.getLabel(), stage.isOnDemand(), Amounts.optionalDuration(stage.getLongest()),
                hazards(stage.getHazards()), steps(stage.getSteps()));
    }

    private WorkStage makeSafe() {
        return new WorkStage(MAKE_SAFE, procedure.getMakeSafe().getLabel(), false, Optional.empty(), List.of(),
                steps(procedure.getMakeSafe().getSteps()));
    }

    private List<Step> steps(List<org.benchwright.model.Step> written) {
        return written.stream().map(s -> new StepCompiler(procedure.getFamily(), protectedItems).compile(s)).toList();
    }

    /** Those of the procedure are shown before each of its stages. */
    private List<String> hazards(List<org.benchwright.model.Hazard> own) {
        return Stream.concat(procedure.getShownHazards().stream(), own.stream()).map(Named::getName).distinct().toList();
    }

    // ---- soak

    private SoakStage soak(Soak s) {
        Duration lasting = Amounts.duration(s.getLength());
        Optional<Look> look = Optional.ofNullable(s.getLook());
        return new SoakStage(s.getName(), s.getLabel(), hazards(s.getHazards()), lasting, kept(s.getKeeps()),
                s.getConditions().stream().map(c -> new Condition(c.getName(), Amounts.limits(c.getLimits()))).toList(),
                look.map(l -> Amounts.duration(l.getEvery())).orElse(lasting),
                look.flatMap(l -> Amounts.optionalDuration(l.getTolerance())).orElse(Duration.ZERO),
                Optional.ofNullable(s.getGap()).map(PlanCompiler::gap), whenStopped(s, false), whenStopped(s, true),
                Optional.ofNullable(s.getWatch()).map(w -> new SoakStage.Watch(Amounts.duration(w.getEvery()),
                        Math.max(1, w.getBadToStop()), Math.max(1, w.getMissedToSilent()),
                        look.filter(Look::isUnlessWatched).map(l -> CompileWords.of("watch.insteadOfLooks")))));
    }

    /** What must keep showing; usually one mode, and its name then stands for it. */
    private Signal.ModeShows kept(List<Indication> keeps) {
        if (keeps.size() == 1 && keeps.get(0) instanceof ModeIndication mode) {
            return signals.ofMode(mode.getMode());
        }
        List<Signal> shows = keeps.stream().map(signals::still).toList();
        return new Signal.ModeShows(CompileWords.of("soak.kept"), shows);
    }

    private static SoakStage.Gap gap(Gap written) {
        return new SoakStage.Gap(Amounts.duration(written.getLongest()), Moves.of(written.getOutcome(), written));
    }

    /** A stop outside the conditions is not charged to the unit unless the procedure says what it leads to. */
    private static Move whenStopped(Soak s, boolean outside) {
        Optional<Move> written = s.getStops().stream().filter(w -> w.isOutsideConditions() == outside).findFirst()
                .map(w -> Moves.move(w.getOutcome()));
        return written.orElseGet(() -> outside ? Moves.UNDECIDED : Moves.of(null, s));
    }
}
