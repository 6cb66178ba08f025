package org.benchwright.workshop.internal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.core.PointAddress;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.WatchPoint;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.revision.RevisionFact;

/**
 * The names under which records are stored where one of several can stand. They are part of the ledger's format: a class may be
 * renamed, its name here may not.
 */
public final class TypeNames {

    private final Map<String, Class<? extends Record>> classes;
    private final Map<Class<?>, String> names;

    private TypeNames(Map<String, Class<? extends Record>> classes) {
        this.classes = Map.copyOf(classes);
        this.names = classes.entrySet().stream().collect(Collectors.toUnmodifiableMap(Map.Entry::getValue, Map.Entry::getKey));
    }

    /** Events of format 1: the kinds of entries in the ledger. */
    public static TypeNames events() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("opened", Fact.Opened.class);
        table.put("precondition-answered", Observation.PreconditionAnswered.class);
        table.put("hazard-acknowledged", Fact.HazardAcknowledged.class);
        table.put("hazard-known", Fact.HazardKnown.class);
        table.put("bench-proved", Fact.BenchProved.class);
        table.put("instrument-named", Observation.InstrumentNamed.class);
        table.put("switched", Fact.Switched.class);
        table.put("marked", Fact.Marked.class);
        table.put("tone-given", Fact.ToneGiven.class);
        table.put("seen", Observation.Seen.class);
        table.put("tapped", Observation.Tapped.class);
        table.put("questioned", Fact.Questioned.class);
        table.put("measured", Observation.Measured.class);
        table.put("cell-read", Observation.CellRead.class);
        table.put("reason-given", Observation.ReasonGiven.class);
        table.put("text-entered", Observation.TextEntered.class);
        table.put("fault-log-entered", Observation.FaultLogEntered.class);
        table.put("confirmed", Observation.Confirmed.class);
        table.put("compared", Observation.Compared.class);
        table.put("attached", Observation.Attached.class);
        table.put("item-confirmed", Observation.ItemConfirmed.class);
        table.put("released", Fact.Released.class);
        table.put("applied", Fact.Applied.class);
        table.put("wait-elapsed", Fact.WaitElapsed.class);
        table.put("looked", Observation.Looked.class);
        table.put("struck", Fact.Struck.class);
        table.put("taken-over", Fact.TakenOver.class);
        table.put("identified", Fact.Identified.class);
        table.put("placed", Fact.Placed.class);
        table.put("noted", Fact.Noted.class);
        table.put("abandoned", Fact.Abandoned.class);
        table.put("interrupted", Fact.Interrupted.class);
        table.put("power-answered", Fact.PowerAnswered.class);
        table.put("clock-changed", Fact.ClockChanged.class);
        table.put("watch-sees", WatchFact.Sees.class);
        table.put("watch-held", WatchFact.Held.class);
        table.put("watch-changed", WatchFact.Changed.class);
        table.put("watch-condition", WatchFact.ConditionCrossed.class);
        table.put("watch-silent", WatchFact.Silent.class);
        putDerived(table);
        return new TypeNames(table);
    }

    private static void putDerived(Map<String, Class<? extends Record>> table) {
        table.put("precondition-expired", Derived.PreconditionExpired.class);
        table.put("step-opened", Derived.StepOpened.class);
        table.put("wait-began", Derived.WaitBegan.class);
        table.put("check-decided", Derived.CheckDecided.class);
        table.put("step-decided", Derived.StepDecided.class);
        table.put("repeated", Derived.Repeated.class);
        table.put("moved", Derived.Moved.class);
        table.put("soak-begun", Derived.SoakBegun.class);
        table.put("soak-witnessed", Derived.SoakWitnessed.class);
        table.put("soak-ended", Derived.SoakEnded.class);
        table.put("departure-noted", Derived.DepartureNoted.class);
        table.put("nonconformity-noted", Derived.NonconformityNoted.class);
        table.put("conclusion-reached", Derived.ConclusionReached.class);
        table.put("made-safe", Derived.MadeSafe.class);
        table.put("concluded", Derived.Concluded.class);
        table.put("rehearsal-ended", Derived.RehearsalEnded.class);
    }

    /** What is signed about revisions. */
    public static TypeNames revisions() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("revision-prepared", RevisionFact.Prepared.class);
        table.put("revision-approved", RevisionFact.Approved.class);
        table.put("revision-withdrawn", RevisionFact.Withdrawn.class);
        table.put("reviews-planned", RevisionFact.ReviewsPlanned.class);
        table.put("reviews-ended", RevisionFact.ReviewsEnded.class);
        return new TypeNames(table);
    }

    /** What people sign about records after their seal. */
    public static TypeNames records() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("departure-decided", RecordFact.DepartureDecided.class);
        table.put("nonconformity-decided", RecordFact.NonconformityDecided.class);
        table.put("amended", RecordFact.Amended.class);
        table.put("reviewed", RecordFact.Reviewed.class);
        table.put("handed-over", RecordFact.HandedOver.class);
        table.put("superseded", RecordFact.Superseded.class);
        table.put("recalled", RecordFact.Recalled.class);
        table.put("attachment-withdrawn", RecordFact.AttachmentWithdrawn.class);
        table.put("voided", RecordFact.Voided.class);
        return new TypeNames(table);
    }

    /** What is signed about units in the house. */
    public static TypeNames receipts() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("unit-received", ReceiptFact.Received.class);
        table.put("receipt-corrected", ReceiptFact.Corrected.class);
        table.put("unit-given-back", ReceiptFact.GivenBack.class);
        table.put("unit-repaired", ReceiptFact.Repaired.class);
        table.put("attachment-withdrawn", ReceiptFact.AttachmentWithdrawn.class);
        return new TypeNames(table);
    }

    /** What is signed about instruments. */
    public static TypeNames instruments() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("instrument-added", InstrumentFact.Added.class);
        table.put("instrument-calibrated", InstrumentFact.Calibrated.class);
        table.put("instrument-moved", InstrumentFact.Moved.class);
        table.put("instrument-retired", InstrumentFact.Retired.class);
        table.put("instrument-reinstated", InstrumentFact.Reinstated.class);
        return new TypeNames(table);
    }

    /** What a plan of format 1 is made of. */
    public static TypeNames plan() {
        Map<String, Class<? extends Record>> table = new LinkedHashMap<>();
        table.put("steps", WorkStage.class);
        table.put("soak", SoakStage.class);
        table.put("energise", Action.Energise.class);
        table.put("isolate", Action.Isolate.class);
        table.put("mark", Action.Mark.class);
        table.put("expect", Action.Expect.class);
        table.put("measure", Action.Measure.class);
        table.put("enter-text", Action.EnterText.class);
        table.put("enter-fault-log", Action.EnterFaultLog.class);
        table.put("confirm", Action.Confirm.class);
        table.put("compare", Action.Compare.class);
        table.put("attach", Action.Attach.class);
        table.put("choose", Action.Choose.class);
        table.put("release", Action.Release.class);
        table.put("wait", Action.Wait.class);
        table.put("apply", Action.Apply.class);
        table.put("end", Action.End.class);
        table.put("go", Action.Go.class);
        table.put("grid", Action.Grid.class);
        table.put("derive", Action.Derive.class);
        table.put("branch", Action.Branch.class);
        table.put("conclude", Move.Conclude.class);
        table.put("go-to", Move.GoTo.class);
        table.put("release-by", Move.ReleaseBy.class);
        table.put("begin-again", Move.BeginAgain.class);
        putSignals(table);
        putPoints(table);
        table.put("name", Expression.Name.class);
        table.put("fixed", Expression.Fixed.class);
        table.put("sum", Expression.Sum.class);
        table.put("difference", Expression.Difference.class);
        return new TypeNames(table);
    }

    private static void putSignals(Map<String, Class<? extends Record>> table) {
        table.put("lamp", Signal.LampShows.class);
        table.put("display", Signal.DisplayShows.class);
        table.put("mode", Signal.ModeShows.class);
        table.put("off", LampPattern.Off.class);
        table.put("steady", LampPattern.Steady.class);
        table.put("flashing", LampPattern.Flashing.class);
        table.put("any-rate", FlashRate.Any.class);
        table.put("slow", FlashRate.Slow.class);
        table.put("normal", FlashRate.Normal.class);
        table.put("around", FlashRate.Around.class);
    }

    private static void putPoints(Map<String, Class<? extends Record>> table) {
        table.put("in-mode", WatchPoint.InMode.class);
        table.put("lamp-lit", WatchPoint.LampLit.class);
        table.put("reads", WatchPoint.Reads.class);
        table.put("register", PointAddress.Register.class);
        table.put("node", PointAddress.Node.class);
        table.put("server-state", PointAddress.ServerState.class);
    }

    Optional<Class<? extends Record>> classOf(String name) {
        return Optional.ofNullable(classes.get(name));
    }

    /** The name of a class that is in the table. */
    String nameOf(Class<?> type) {
        String name = names.get(type);
        if (name == null) {
            throw new IllegalStateException(type.getName() + " has no name in the format");
        }
        return name;
    }

    /** All names with their classes. */
    public Map<String, Class<? extends Record>> table() {
        return classes;
    }
}
