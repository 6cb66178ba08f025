package org.benchwright.present.internal;

import java.time.Instant;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Actor;
import org.benchwright.engine.Demand;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.WatchStanding;
import org.benchwright.engine.event.Fact;
import org.benchwright.present.OpeningHours;
import org.benchwright.present.UnitRow;

/** Open tests as rows of the list of units on the bench. */
public final class Rows {

    private Rows() {
    }

    /**
     * The row of a test.
     *
     * @param test its id
     * @param now   wall time
     * @param hours when somebody is in
     */
    public static UnitRow of(String test, TestRun run, Instant now, OpeningHours hours) {
        Fact.Opened opening = run.opening();
        Demand demand = run.demand();
        // What is asked before a look, after an interruption or by whoever takes the test over, puts no look off.
        Optional<Demand.Look> toCome = run.lookToCome();
        Optional<Demand.Look> look = toCome.filter(l -> !l.begins());
        Optional<Instant> due = look.map(l -> l.since().instant().plus(l.due()));
        Optional<WatchStanding> watch = WatchStanding.of(run);
        boolean asked = look.filter(l -> l.soak().watch().isPresent()).isPresent();
        Optional<String> left = WatchWords.left(run);
        String watched = left.or(() -> watch.map(w -> WatchWords.standing(w, now))).orElse(asked ? Message.WATCH_STATE_NONE.text() : "");
        return new UnitRow(test, opening.serial(), run.plan().family().title(),
                Message.ROW_PROCEDURE.text(run.plan().title(), String.valueOf(opening.revision())), repaired(opening, stage(run, demand, toCome)),
                look.map(l -> l.soak().lasting().minus(l.witnessed())), due, due.map(at -> at.isBefore(now)).orElse(false),
                state(run, demand, toCome), opening.rehearsal(), watched,
                left.isPresent() || watch.filter(w -> WatchWords.needsSomebody(w, now)).isPresent(), run.position(),
                run.holder().map(Actor::id).orElse(""),
                hours.calendar().flatMap(calendar -> look.flatMap(l -> LookOutlook.reminder(calendar, l))),
                look.map(l -> l.since().instant().plus(l.due()).plus(l.soak().lookTolerance())),
                look.map(l -> new Indications(run.plan().family()).of(l.soak().keep())).orElse(""));
    }

    private static String repaired(Fact.Opened opening, String stage) {
        return opening.mended().map(mended -> HouseWords.ROW_REPAIRED.text(stage, mended.repairs().stream()
                .map(repair -> RepairWords.of(repair.what(), repair.parts())).collect(Collectors.joining("; ")))).orElse(stage);
    }

    private static String stage(TestRun run, Demand demand, Optional<Demand.Look> look) {
        if (demand instanceof Demand.Nothing) {
            return Message.PLACE_END.text();
        }
        return look.map(l -> l.soak().title()).or(() -> run.place().map(place -> place.stage().title())).orElse(Message.PLACE_BEFORE.text());
    }

    private static String state(TestRun run, Demand demand, Optional<Demand.Look> look) {
        if (demand instanceof Demand.Nothing) {
            return Message.STATE_NOT_SEALED.text();
        }
        if (look.isPresent()) {
            return (look.get().begins() ? Message.STATE_READY_TO_SOAK : demand instanceof Demand.TellPower ? Message.STATE_SOAK_INTERRUPTED
                    : Message.STATE_ON_SOAK).text();
        }
        boolean live = !run.live().isEmpty();
        String step = run.place().map(place -> Questions.spaced(place.step().name())).orElse("");
        return live ? Message.STATE_LIVE.text(step) : Message.STATE_AT_STEP.text(step);
    }
}
