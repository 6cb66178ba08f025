package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.refused;
import static org.benchwright.engine.internal.Refusals.require;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Approval;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.WatchFact;

/** Whether a test takes a fact where it stands. What is refused here can't get into a record by any face, and is found in a forged one. */
public final class FactGate {

    private static final int LONGEST_POSITION = 20;

    private FactGate() {
    }

    /**
     * Checks a fact against the state.
     *
     * @throws RefusedException if it is not taken; nothing has changed then
     */
    public static void check(RunState s, Fact fact, Actor actor, Moment moment) throws RefusedException {
        require(actor.role() == People.teller(fact), "teller." + People.teller(fact).name(), actor);
        if (fact instanceof Fact.Opened o) {
            opening(s, o, moment);
            return;
        }
        require(s.opened(), "refused.notOpened");
        require(s.outcome().isEmpty(), "refused.ended");
        if (fact instanceof WatchFact told) {
            WatchGate.check(s, told, moment);
            return;
        }
        time(s, fact, moment);
        require(!s.people().wouldWorkOnOwnRelease(fact, actor, s.makingSafe()), "refused.ownWork", actor.id());
        if (fact instanceof Fact.Noted n) {
            require(!n.text().isBlank(), "refused.emptyText");
        } else if (fact instanceof Fact.Struck struck) {
            require(s.strikeable().filter(q -> q == struck.sequence()).isPresent(), "refused.strike");
        } else if (fact instanceof Fact.Abandoned a) {
            require(!s.makingSafe(), "refused.makingSafe");
            require(!a.reason().isBlank(), "refused.noReason");
        } else if (!(fact instanceof Fact.ClockChanged) && !(fact instanceof Fact.Interrupted) && !beside(s, fact, actor, moment)) {
            answer(s, fact, moment);
        }
    }

    /** What answers nothing; true if the fact is such a one, and good. */
    private static boolean beside(RunState s, Fact fact, Actor actor, Moment moment) throws RefusedException {
        if (fact instanceof Fact.TakenOver t) {
            String holder = s.holder().orElse(actor).id();
            require(t.from().equals(holder) && !holder.equalsIgnoreCase(actor.id()), "refused.takenOver", holder);
            require(!(Demands.of(s) instanceof Demand.AwaitTone), "refused.takenOverNow");
        } else if (fact instanceof Fact.Identified i) {
            require(i.serial().equals(s.opening().serial()), "refused.otherUnit", i.serial(), s.opening().serial());
        } else if (fact instanceof Fact.Placed p) {
            require(!p.position().isBlank() && p.position().length() <= LONGEST_POSITION, "refused.position", LONGEST_POSITION);
        } else if (fact instanceof Fact.BenchProved proof) {
            ProvedBench.told(s, proof, moment.instant());
        } else {
            return false;
        }
        return true;
    }

    private static void opening(RunState s, Fact.Opened o, Moment moment) throws RefusedException {
        require(!s.opened(), "refused.opened");
        require(moment.sitting() == 1, "refused.sitting");
        boolean same = o.procedure().equals(s.plan().name()) && o.revision() == s.plan().revision()
                && o.family().equals(s.plan().family().name());
        Optional<Approval> alone = o.approval().filter(approval -> approval.preparedBy().equals(approval.approvedBy()));
        require(!o.rehearsal() || o.receipt().isEmpty() && o.mended().isEmpty(), "refused.rehearsedReceipt");
        require(o.mended().isEmpty() || o.predecessor().isPresent(), "refused.mendedFirst");
        require(alone.isEmpty(), "refused.approvedAlone", alone.map(Approval::event).orElse(0L));
        require(same, "refused.otherPlan", o.procedure(), o.revision(), s.plan().name(), s.plan().revision());
        Optional<String> mask = SerialNotRead.mask(s.plan(), o);
        if (mask.isPresent() && SerialNotRead.excuse(o).isEmpty()) {
            throw refused("refused.serial", o.serial(), mask.get(), s.plan().family().title());
        }
        List<String> faults = PlanFaults.of(s.plan());
        require(faults.isEmpty(), "refused.plan", String.join("; ", faults));
    }

    private static void time(RunState s, Fact fact, Moment moment) throws RefusedException {
        Moment last = s.lastMoment();
        if (fact instanceof Fact.Interrupted i) {
            require(moment.sitting() == last.sitting() + 1 && !i.gap().isNegative(), "refused.sitting");
        } else {
            require(moment.sitting() == last.sitting() && moment.offset().compareTo(last.offset()) >= 0, "refused.time");
        }
    }

    private static void answer(RunState s, Fact fact, Moment moment) throws RefusedException {
        Demand demand = Demands.of(s);
        boolean fits = fitsDemand(demand, fact) || fitsGroup(s, demand, fact);
        require(fits, "refused.notAsked", demand.key());
        ProvedBench.required(s, moment.instant());
        ContentGate.check(s, demand, fact, moment);
    }

    // ---- does the fact answer what is asked?

    private static boolean fitsDemand(Demand d, Fact fact) {
        if (d instanceof Demand.AnswerPrecondition p) {
            return fact instanceof Observation.PreconditionAnswered a && a.precondition().equals(p.precondition().name());
        } else if (d instanceof Demand.AcknowledgeHazard h) {
            return fact instanceof Fact.HazardAcknowledged a && a.hazard().equals(h.hazard().name())
                    || fact instanceof Fact.HazardKnown k && k.hazard().equals(h.hazard().name());
        } else if (d instanceof Demand.NameInstrument i) {
            return fact instanceof Observation.InstrumentNamed a && a.instrument().equals(i.instrument().name());
        } else if (d instanceof Demand.Switch w) {
            return fact instanceof Fact.Switched a && a.item().equals(w.item()) && a.live() == w.live();
        } else if (d instanceof Demand.PressMark m) {
            return fact instanceof Fact.Marked a && a.mark().equals(m.mark().id());
        } else if (d instanceof Demand.Release r) {
            return fact instanceof Fact.Released a && a.check().equals(r.check());
        } else if (d instanceof Demand.TellPower) {
            return fact instanceof Fact.PowerAnswered;
        } else if (d instanceof Demand.Look l) {
            return fact instanceof Observation.Looked a && a.stage().equals(l.soak().name());
        }
        return fitsCheck(d, fact);
    }

    private static boolean fitsCheck(Demand d, Fact fact) {
        if (d instanceof Demand.TakeMeasurement m) {
            return fact instanceof Observation.Measured a && a.check().equals(m.measure().id())
                    || fact instanceof Fact.Questioned q && q.check().equals(m.measure().id());
        } else if (d instanceof Demand.ReadCell c) {
            return fact instanceof Observation.CellRead a && a.check().equals(c.grid().id()) && a.cell() == c.cell()
                    || fact instanceof Fact.Questioned q && q.check().equals(c.grid().id());
        } else if (d instanceof Demand.GiveReason r) {
            return fact instanceof Observation.ReasonGiven a && a.check().equals(r.check());
        } else if (d instanceof Demand.EnterText t) {
            return fact instanceof Observation.TextEntered a && a.check().equals(t.entry().id());
        } else if (d instanceof Demand.EnterFaultLog f) {
            return fact instanceof Observation.FaultLogEntered a && a.check().equals(f.entry().id());
        } else if (d instanceof Demand.ConfirmStatement c) {
            return fact instanceof Observation.Confirmed a && a.check().equals(c.confirm().id());
        } else if (d instanceof Demand.CompareEntries c) {
            return fact instanceof Observation.Compared a && a.check().equals(c.compare().id());
        } else if (d instanceof Demand.AttachFile f) {
            return fact instanceof Observation.Attached a && a.check().equals(f.attach().id());
        } else if (d instanceof Demand.ConfirmItem i) {
            return fact instanceof Observation.ItemConfirmed a && a.check().equals(i.choose().id()) && a.item().equals(i.item().name());
        } else if (d instanceof Demand.Apply p) {
            return fact instanceof Fact.Applied a && a.check().equals(p.apply().id());
        } else if (d instanceof Demand.AwaitTime t) {
            return fact instanceof Fact.WaitElapsed a && a.check().equals(t.time().id());
        }
        return false;
    }

    /** Expectations run together: any of their tones that is due, and any answer whose last tone has sounded. */
    private static boolean fitsGroup(RunState s, Demand d, Fact fact) {
        if (!(d instanceof Demand.AwaitTone) && !(d instanceof Demand.AnswerExpectation)) {
            return false;
        }
        return fact instanceof Fact.ToneGiven t && Expectations.toneToCome(s, t).isPresent()
                || fact instanceof Observation.Seen a && Expectations.asked(s, a.check())
                || fact instanceof Observation.Tapped t && Expectations.asked(s, t.check());
    }
}
