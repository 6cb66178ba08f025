package org.benchwright.language.internal.compile;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.language.internal.DecisionTerms;
import org.benchwright.model.Apply;
import org.benchwright.model.Attachment;
import org.benchwright.model.Branch;
import org.benchwright.model.Comparison;
import org.benchwright.model.Conclude;
import org.benchwright.model.Confirmation;
import org.benchwright.model.Decision;
import org.benchwright.model.Derive;
import org.benchwright.model.Energise;
import org.benchwright.model.Erase;
import org.benchwright.model.Expectation;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.FitUnit;
import org.benchwright.model.FittedOption;
import org.benchwright.model.GoTo;
import org.benchwright.model.Grid;
import org.benchwright.model.Guard;
import org.benchwright.model.Instrument;
import org.benchwright.model.Isolate;
import org.benchwright.model.Judgement;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Load;
import org.benchwright.model.LoadItem;
import org.benchwright.model.LogCondition;
import org.benchwright.model.LogEntry;
import org.benchwright.model.Mark;
import org.benchwright.model.MeasureAgain;
import org.benchwright.model.Measurement;
import org.benchwright.model.Named;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.RemoveUnit;
import org.benchwright.model.Reveals;
import org.benchwright.model.Stage;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.benchwright.model.TextEntry;
import org.benchwright.model.Timing;
import org.benchwright.model.Wait;
import org.benchwright.model.util.ProcedureSwitch;

/** One step: its statements as actions with ids that are unique within it. */
final class StepCompiler extends ProcedureSwitch<Optional<Action>> {

    /** The one item that the language switches. */
    private static final String SUPPLY = "supply";

    private final Family family;
    private final Signals signals;
    private final List<KeptItem> protectedItems;
    private final Set<String> ids = new HashSet<>();
    private final Map<Mark, String> marks = new HashMap<>();

    StepCompiler(Family family, List<KeptItem> protectedItems) {
        this.family = family;
        signals = new Signals(family);
        this.protectedItems = protectedItems;
    }

    org.benchwright.engine.plan.Step compile(Step step) {
        List<Action> actions = new ArrayList<>();
        // Other steps derive values from these by their names, which must not depend on what else in the step is called so.
        Procedures.values(step).forEach(value -> ids.add(value.getName()));
        guards(step, actions);
        int begin = actions.size();
        for (Statement statement : step.getStatements()) {
            doSwitch(statement).ifPresent(actions::add);
        }
        if (Procedures.isConfirmedAsDone(step)) {
            actions.add(begin, new Action.Confirm(id("done"), CompileWords.of("step.done"), Moves.of(null, step)));
        }
        List<String> reveals = step.getStatements().stream().filter(Reveals.class::isInstance).map(Reveals.class::cast)
                .flatMap(r -> r.getFaults().stream()).map(Named::getName).toList();
        return new org.benchwright.engine.plan.Step(step.getName(), step.getText(), Amounts.optionalDuration(step.getTakes()),
                step.getHazards().stream().map(Named::getName).toList(), reveals, actions);
    }

    /** What has to be so for the step to be carried out, the stage's first. */
    private void guards(Step step, List<Action> actions) {
        if (step.eContainer() instanceof Stage stage && stage.getOnly() != null) {
            actions.add(branch(stage.getOnly(), stage.getOnly().isNegated(), Optional.empty(), Optional.of("seen." + stage.getName())));
        }
        if (step.getOnly() != null) {
            actions.add(branch(step.getOnly(), step.getOnly().isNegated(), Optional.empty(), Optional.empty()));
        }
    }

    /** @param seen under which key an observation holds for the whole test; what is fitted always does */
    private Action branch(Guard guard, boolean when, Optional<Move.GoTo> to, Optional<String> seen) {
        FittedOption option = guard.getOption();
        return option == null ? new Action.Branch(id("seen"), guard.getObservation(), when, to, seen)
                : new Action.Branch(id("fitted"), CompileWords.of("option.fitted", option.getLabel()), when, to,
                        Optional.of("fitted." + option.getName()));
    }

    @Override
    public Optional<Action> caseBranch(Branch b) {
        return some(branch(b.getCondition(), !b.getCondition().isNegated(), Optional.of(Moves.goTo(b.getTarget())), Optional.empty()));
    }

    private String id(String wanted) {
        String id = wanted;
        for (int n = 2; !ids.add(id); n++) {
            id = wanted + "-" + n;
        }
        return id;
    }

    private static Optional<Action> some(Action action) {
        return Optional.of(action);
    }

    // ---- switching and fitting

    @Override
    public Optional<Action> caseEnergise(Energise e) {
        return some(new Action.Energise(id(SUPPLY + ".on"), SUPPLY));
    }

    @Override
    public Optional<Action> caseIsolate(Isolate i) {
        return some(new Action.Isolate(id(SUPPLY + ".off"), SUPPLY));
    }

    @Override
    public Optional<Action> caseFitUnit(FitUnit f) {
        return some(new Action.Confirm(id("fitted"), CompileWords.of("unit.fitted"), Moves.of(null, f)));
    }

    @Override
    public Optional<Action> caseRemoveUnit(RemoveUnit r) {
        return some(new Action.Confirm(id("removed"), CompileWords.of("unit.removed"), Moves.of(null, r)));
    }

    @Override
    public Optional<Action> caseApply(Apply a) {
        return some(new Action.Apply(id("apply"), Amounts.quantity(a.getAmount()),
                Optional.ofNullable(a.getInstrument()).map(Named::getName).orElse("")));
    }

    @Override
    public Optional<Action> caseWait(Wait w) {
        return some(new Action.Wait(id("wait"), Amounts.duration(w.getTime())));
    }

    // ---- indications

    @Override
    public Optional<Action> caseMark(Mark m) {
        marks.put(m, id(m.getName()));
        return some(new Action.Mark(marks.get(m), m.getPrompt()));
    }

    @Override
    public Optional<Action> caseExpectation(Expectation e) {
        return some(new Action.Expect(id(Signals.name(e.getAlternatives().get(0))), signals.sequence(e.getAlternatives()),
                window(e.getTiming()), Moves.of(e.getOutcome(), e)));
    }

    private Action.Window window(Timing t) {
        boolean by = t.getWithin() != null;
        Duration opens = by ? Amounts.duration(t.getWithin()) : Amounts.optionalDuration(t.getFrom()).orElse(Duration.ZERO);
        return new Action.Window(marks.get(t.getMark()), opens, Amounts.optionalDuration(t.getLasting()).orElse(Duration.ZERO), by);
    }

    // ---- measurements

    @Override
    public Optional<Action> caseMeasurement(Measurement m) {
        org.benchwright.core.Limits limits = Amounts.limits(m.getLimits());
        UnitOfMeasure unit = m.getUnit() == null ? limits.unit() : UnitOfMeasure.of(m.getUnit());
        return some(new Action.Measure(m.getName(), m.getInstrument().getName(), unit, limits, DecisionTerms.rule(m),
                Optional.ofNullable(m.getRepeat()).map(StepCompiler::again), Moves.of(m.getOutcome(), m), undecided(m),
                Optional.ofNullable(m.getReadings()).map(Action.Count::new),
                m.isBlind() ? Optional.of(Action.Measure.Entry.BLIND) : Optional.empty()));
    }

    @Override
    public Optional<Action> caseDerive(Derive d) {
        UnitOfMeasure unit = UnitOfMeasure.of(d.getLimits().getUnit());
        return some(new Action.Derive(d.getName(), GridParts.expression(d.getExpression(), unit), Amounts.limits(d.getLimits()),
                DecisionTerms.rule(d),
                Moves.of(d.getOutcome(), d), undecided(d)));
    }

    private static Action.Again again(MeasureAgain written) {
        return new Action.Again(written.getTimes(), DecisionTerms.combination(written));
    }

    /**
     * Where an undecided value leads: as it says itself, else as the check's own outcome says, unless that would reject: undecided
     * never turns into rejected by default.
     */
    private static Move undecided(Decision d) {
        if (d.getUndecided() != null) {
            return Moves.move(d.getUndecided());
        }
        Move written = Moves.of(d.getOutcome(), d);
        boolean rejects = written instanceof Move.Conclude c && c.verdict() != Verdict.UNDECIDED;
        return rejects ? Moves.UNDECIDED : written;
    }

    @Override
    public Optional<Action> caseGrid(Grid g) {
        Judgement judgement = g.getJudgement();
        UnitOfMeasure unit = UnitOfMeasure.of(g.getReading().getUnit());
        return some(new Action.Grid(id(g.getReading().getName()), g.getReading().getName(), unit,
                g.getAxes().stream().map(GridParts::axis).toList(),
                Amounts.optionalDuration(g.getReading().getSettle()).orElse(Duration.ZERO),
                GridParts.expression(judgement.getExpression(), unit), Amounts.limits(judgement.getLimits()),
                DecisionTerms.rule(judgement), DecisionTerms.instrument(g)
                        .map(Instrument::getName), Moves.of(judgement.getOutcome(), g), undecided(judgement)));
    }

    // ---- entries

    @Override
    public Optional<Action> caseTextEntry(TextEntry t) {
        return some(new Action.EnterText(id("text"), t.getPrompt()));
    }

    @Override
    public Optional<Action> caseLogEntry(LogEntry l) {
        String label = l.getItem().getLabel();
        String title = switch (l.getCondition()) {
            case AS_FOUND -> CompileWords.of("log.asFound", label);
            case AS_LEFT -> CompileWords.of("log.asLeft", label);
            case UNSTATED -> label;
        };
        return some(new Action.EnterFaultLog(id(l.getItem().getName()), l.getCondition() == LogCondition.AS_FOUND, Optional.of(title)));
    }

    @Override
    public Optional<Action> caseConfirmation(Confirmation c) {
        return some(new Action.Confirm(id("confirm"), c.getText(), Moves.of(c.getOutcome(), c)));
    }

    @Override
    public Optional<Action> caseComparison(Comparison c) {
        return some(new Action.Compare(id(c.getName()), c.getLeft(), c.getRight(), Moves.of(c.getOutcome(), c)));
    }

    @Override
    public Optional<Action> caseAttachment(Attachment a) {
        String kind = a.getKind().getName().toLowerCase(Locale.ROOT);
        return some(new Action.Attach(id(kind), kind, a.getLabel()));
    }

    // ---- what could destroy

    @Override
    public Optional<Action> caseErase(Erase e) {
        Stream<KeptItem> alsoSpared = protectedItems.stream().filter(p -> !e.getItems().contains(p) && !e.getSpared().contains(p));
        return some(new Action.Choose(id("erase"), Action.Choose.Verb.ERASE, e.getItems().stream().map(this::item).toList(),
                Stream.concat(e.getSpared().stream(), alsoSpared).map(this::item).toList(), Moves.of(null, e)));
    }

    @Override
    public Optional<Action> caseLoad(Load l) {
        return some(new Action.Choose(id("load"), Action.Choose.Verb.LOAD,
                l.getItems().stream().map(this::toLoad).toList(), l.getLeftOut().stream().map(this::toLoad).toList(), Moves.of(null, l)));
    }

    /** An item as the family declares it; where it declares none, its name with spaces reads well enough. */
    private Action.Choose.Item toLoad(String name) {
        String title = Families.loadItem(family, name).map(LoadItem::getLabel).orElseGet(() -> name.replace('_', ' '));
        boolean replacesProtected = Families.loadItem(family, name).filter(item -> item.getReplaces().stream().anyMatch(protectedItems::contains))
                .isPresent();
        return new Action.Choose.Item(name, title, replacesProtected);
    }

    private Action.Choose.Item item(KeptItem kept) {
        return new Action.Choose.Item(kept.getName(), kept.getLabel(), protectedItems.contains(kept));
    }

    // ---- going elsewhere

    @Override
    public Optional<Action> caseRelease(Release r) {
        return some(new Action.Release(id("release"), Moves.role(r.getBy()), r.getText(), Moves.of(null, r)));
    }

    @Override
    public Optional<Action> caseConclude(Conclude c) {
        return some(new Action.End(id("conclude"), Moves.conclude(c)));
    }

    @Override
    public Optional<Action> caseGoTo(GoTo g) {
        return some(new Action.Go(id("go"), Moves.goTo(g)));
    }

    @Override
    public Optional<Action> caseReveals(Reveals r) {
        return Optional.empty();
    }

    @Override
    public Optional<Action> defaultCase(org.eclipse.emf.ecore.EObject unknown) {
        throw new IllegalArgumentException("no action for " + unknown.eClass().getName());
    }

    /** The largest value that an instrument has to read, where written. */
    static Optional<Quantity> range(Instrument i) {
        if (i.getUpTo() != null) {
            return Optional.of(Amounts.quantity(i.getUpTo()));
        }
        return Optional.ofNullable(i.getRange()).flatMap(r -> Amounts.limits(r).upper());
    }
}
