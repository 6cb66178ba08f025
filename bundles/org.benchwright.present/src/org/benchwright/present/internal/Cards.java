package org.benchwright.present.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.ProtectedItem;
import org.benchwright.engine.plan.Step;
import org.benchwright.present.Countdown;
import org.benchwright.present.HazardPanel;
import org.benchwright.present.OpeningHours;
import org.benchwright.present.StepCard;
import org.benchwright.present.StepCard.KeyHint;

/** The card of what a test needs now. */
public final class Cards {

    private final TestRun run;
    private final Plan plan;
    private final Demand demand;
    private final Indications indications;

    private Cards(TestRun run) {
        this.run = run;
        this.plan = run.plan();
        this.demand = run.demand();
        this.indications = new Indications(plan.family());
    }

    /**
     * The card at this moment.
     *
     * @param hours when somebody is in
     */
    public static StepCard of(TestRun run, Moment now, OpeningHours hours) {
        return new Cards(run).card(now, hours);
    }

    /** What time brings next, if the test waits for it. */
    public static Optional<Countdown> countdown(Demand demand, Moment now) {
        if (demand instanceof Demand.AwaitTone d) {
            return Optional.of(countdown(Message.COUNT_TONE.text(), d.after(), d.marked(), now, true));
        } else if (demand instanceof Demand.AwaitTime d) {
            return Optional.of(countdown(Message.COUNT_WAIT.text(), d.time().time(), d.began(), now, true));
        } else if (demand instanceof Demand.Look d && !d.begins()) {
            return Optional.of(countdown(Message.COUNT_LOOK.text(), d.due(), d.since(), now, false));
        }
        return Optional.empty();
    }

    private static Countdown countdown(String what, Duration after, Moment since, Moment now, boolean audible) {
        Instant at = since.instant().plus(after);
        return new Countdown(what, after.minus(now.since(since)), at, audible);
    }

    private StepCard card(Moment now, OpeningHours hours) {
        Questions.Question question = run.questioned().map(reading -> Questions.questioned(demand, reading))
                .orElseGet(() -> new Questions(plan).of(demand));
        Optional<Step> step = stepToShow();
        String instruction = Stream.of(step.map(Step::instruction).orElse(""), question.instruction()).filter(s -> !s.isBlank())
                .reduce((a, b) -> a + " " + b).orElse("");
        return new StepCard(unit(), placeWords(), Capitals.of(instruction), hazards(),
                Stream.of(benchOwed(now).stream(), reminders(step).stream(), connected().stream(),
                        LookOutlook.of(demand, now.instant(), run.rehearsal() ? OpeningHours.unknown() : hours).stream()).flatMap(all -> all).toList(), preserved(),
                step.map(this::expected).orElse(soakExpected()), asked(question), parts(question),
                demand instanceof Demand.EnterFaultLog, countdown(demand, now), keys());
    }

    /** That the bench has to be proved first, before a hand is at the switch. */
    private Optional<String> benchOwed(Moment now) {
        return run.benchProofOwed(now.instant()).map(within -> Hands.BENCH_OWED.text(Durations.words(within)));
    }

    /** While a grid is read, the worst cell so far stands beside the question. */
    private String asked(Questions.Question question) {
        return run.worstCellSoFar().map(worst -> question.question() + " " + Hands.WORST_SO_FAR.text(worst)).orElse(question.question());
    }

    private List<String> parts(Questions.Question question) {
        boolean tapped = demand instanceof Demand.AnswerExpectation d && TestRun.tapsAlong(d.expect()).isPresent();
        return tapped ? List.of(Hands.HOW_SEEN_TAP.text()) : question.parts();
    }

    /** The step whose instruction is shown; none where something has to be read, answered or switched off before it. */
    private Optional<Step> stepToShow() {
        boolean before = demand instanceof Demand.AnswerPrecondition || demand instanceof Demand.AcknowledgeHazard
                || demand instanceof Demand.TellPower || run.switchesOffFirst();
        return before ? Optional.empty() : place().map(Place::step);
    }

    private String unit() {
        Fact.Opened opening = run.opening();
        String unit = Message.CARD_UNIT.text(opening.serial(), plan.family().title(), plan.title(), String.valueOf(plan.revision()));
        return opening.rehearsal() ? Message.CARD_REHEARSAL.text(unit) : unit;
    }

    private Optional<Place> place() {
        return demand instanceof Demand.Nothing ? Optional.empty() : run.place();
    }

    private String placeWords() {
        if (demand instanceof Demand.AnswerPrecondition) {
            return Message.PLACE_PRECONDITION.text();
        } else if (demand instanceof Demand.Look look) {
            Duration witnessed = Durations.wholeSeconds(look.witnessed());
            return Message.PLACE_SOAK.text(look.soak().title(), Durations.words(witnessed), Durations.words(look.soak().lasting().minus(witnessed)));
        } else if (demand instanceof Demand.TellPower) {
            return Message.PLACE_INTERRUPTED.text();
        } else if (demand instanceof Demand.Nothing) {
            return Message.PLACE_END.text();
        }
        return place().map(this::stepWords).or(() -> run.lookToCome().map(look -> look.soak().title())).orElse(Message.PLACE_BEFORE.text());
    }

    private String stepWords(Place place) {
        int visit = visits(place);
        String words = Message.PLACE_STEP.text(place.stage().title(), Questions.spaced(place.step().name()));
        return visit > 1 ? Message.PLACE_VISIT.text(words, String.valueOf(visit)) : words;
    }

    private int visits(Place place) {
        return run.events().stream().map(event -> event.body() instanceof Derived.StepOpened o && o.step().equals(place.step().name())
                ? o.visit() : 0).reduce(0, Math::max);
    }

    private List<HazardPanel> hazards() {
        return demand instanceof Demand.AcknowledgeHazard d ? List.of(panel(d.hazard())) : List.of();
    }

    private static HazardPanel panel(Hazard h) {
        return new HazardPanel(h.signal(), h.signal().word().toUpperCase(Locale.ROOT), h.what(), h.can(), h.so());
    }

    private List<String> reminders(Optional<Step> step) {
        if (step.isEmpty()) {
            return List.of();
        }
        Stream<String> names = Stream.concat(run.place().map(p -> p.stage().hazards()).orElse(List.of()).stream(),
                step.get().hazards().stream());
        return names.distinct().flatMap(name -> plan.hazard(name).stream())
                .map(h -> Message.HAZARD_REMINDER.text(h.signal().word().toUpperCase(Locale.ROOT), h.what())).toList();
    }

    /** Before a soak that is watched begins, whoever connects the unit is cautioned. */
    private Optional<String> connected() {
        return demand instanceof Demand.Look look && look.begins() && look.soak().watch().isPresent() ? Optional.of(Message.WATCH_CONNECTED.text())
                : Optional.empty();
    }

    private List<String> preserved() {
        return demand instanceof Demand.ConfirmItem ? plan.protectedItems().stream().map(ProtectedItem::title).toList() : List.of();
    }

    private List<String> expected(Step step) {
        boolean timed = demand instanceof Demand.PressMark || demand instanceof Demand.AwaitTone
                || demand instanceof Demand.AnswerExpectation;
        return !timed ? List.of() : step.actions().stream().filter(Action.Expect.class::isInstance)
                .map(a -> indications.line((Action.Expect) a)).toList();
    }

    private List<String> soakExpected() {
        return demand instanceof Demand.Look d ? List.of(indications.of(d.soak().keep())) : List.of();
    }

    private List<KeyHint> keys() {
        List<KeyHint> keys = new ArrayList<>();
        boolean makingSafe = run.place().map(Place::makingSafe).orElse(false);
        if (!run.ended() && !makingSafe) {
            keys.add(new KeyHint("!", Message.KEY_MAKE_SAFE.text()));
        }
        if (run.strikeable().isPresent()) {
            keys.add(new KeyHint("-", Message.KEY_STRIKE.text()));
        }
        if (!run.ended()) {
            keys.add(new KeyHint("+", Message.KEY_NOTE.text()));
        }
        if (!run.ended()) {
            keys.add(new KeyHint("@", Hands.KEY_PLACE.text()));
            keys.add(new KeyHint(">", Hands.KEY_OVER.text()));
        }
        keys.add(new KeyHint("??", Message.KEY_SO_FAR.text()));
        keys.add(new KeyHint("?", Message.KEY_HELP.text()));
        if (!run.ended()) {
            keys.add(new KeyHint("q", Message.KEY_LEAVE.text()));
        }
        return keys;
    }
}
