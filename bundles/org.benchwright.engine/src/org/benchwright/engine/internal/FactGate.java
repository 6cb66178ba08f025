package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.SoakStage;

/** Whether a test takes a fact where it stands. What is refused here can't get into a record by any face, and is found in a forged one. */
public final class FactGate {

    private FactGate() {
    }

    /**
     * Checks a fact against the state.
     *
     * @throws RefusedException if it is not taken; nothing has changed then
     */
    public static void check(RunState s, Fact fact, Actor actor, Moment moment) throws RefusedException {
        if (fact instanceof Fact.Opened o) {
            opening(s, o);
            return;
        }
        require(s.opened(), "refused.notOpened");
        require(s.outcome().isEmpty(), "refused.ended");
        time(s, fact, moment);
        if (fact instanceof Fact.Noted n) {
            require(!n.text().isBlank(), "refused.emptyText");
        } else if (fact instanceof Fact.Struck struck) {
            require(s.strikeable().filter(q -> q == struck.sequence()).isPresent(), "refused.strike");
        } else if (fact instanceof Fact.Abandoned a) {
            require(!s.makingSafe(), "refused.makingSafe");
            require(!a.reason().isBlank(), "refused.noReason");
        } else if (!(fact instanceof Fact.ClockChanged) && !(fact instanceof Fact.Interrupted)) {
            answer(s, fact, actor, moment);
        }
    }

    private static void opening(RunState s, Fact.Opened o) throws RefusedException {
        require(!s.opened(), "refused.opened");
        boolean same = o.procedure().equals(s.plan().name()) && o.revision() == s.plan().revision()
                && o.family().equals(s.plan().family().name());
        require(same, "refused.otherPlan", o.procedure(), o.revision(), s.plan().name(), s.plan().revision());
        Optional<String> mask = s.plan().family().serialMask().filter(m -> !m.accepts(o.serial())).map(m -> m.mask());
        if (mask.isPresent()) {
            throw refused("refused.serial", o.serial(), mask.get(), s.plan().family().title());
        }
    }

    private static void time(RunState s, Fact fact, Moment moment) throws RefusedException {
        Moment last = s.lastMoment();
        if (fact instanceof Fact.Interrupted i) {
            require(moment.sitting() == last.sitting() + 1 && !i.gap().isNegative(), "refused.sitting");
        } else {
            require(moment.sitting() == last.sitting() && moment.offset().compareTo(last.offset()) >= 0, "refused.time");
        }
    }

    private static void answer(RunState s, Fact fact, Actor actor, Moment moment) throws RefusedException {
        Demand demand = Demands.of(s);
        boolean fits = fitsDemand(demand, fact) || fitsGroup(s, demand, fact);
        require(fits, "refused.notAsked", demand.key());
        if (fact instanceof Fact.ToneGiven t) {
            tone(s, t, moment);
        } else if (fact instanceof Fact.WaitElapsed) {
            Demand.AwaitTime wait = (Demand.AwaitTime) demand;
            require(moment.since(wait.began()).compareTo(wait.time().time()) >= 0, "refused.tooEarly");
        } else if (fact instanceof Fact.Released r) {
            release(s, (Demand.Release) demand, r, actor);
        } else if (fact instanceof Fact.InstrumentNamed i) {
            instrument(((Demand.NameInstrument) demand).instrument(), i);
        } else if (fact instanceof Fact.Looked l) {
            look(((Demand.Look) demand).soak(), l);
        } else {
            content(demand, fact);
        }
    }

    private static void content(Demand demand, Fact fact) throws RefusedException {
        if (fact instanceof Fact.Measured m) {
            dimension(((Demand.TakeMeasurement) demand).measure().limits(), m.value());
        } else if (fact instanceof Fact.CellRead c) {
            Action.Grid grid = ((Demand.ReadCell) demand).grid();
            require(grid.unit().sameDimension(c.value().unit()), "refused.dimension", c.value(), grid.unit().word());
        } else if (fact instanceof Fact.PreconditionAnswered p) {
            Optional<Limits> reading = ((Demand.AnswerPrecondition) demand).precondition().reading();
            require(reading.isEmpty() || p.reading().isPresent(), "refused.noReading");
            if (reading.isPresent()) {
                dimension(reading.get(), p.reading().get());
            }
            boolean textOwed = ((Demand.AnswerPrecondition) demand).precondition().text().isPresent() && p.met();
            require(!textOwed || !p.text().isBlank(), "refused.emptyText");
        } else if (fact instanceof Fact.ReasonGiven r) {
            require(!r.reason().isBlank(), "refused.noReason");
        } else if (fact instanceof Fact.TextEntered t) {
            require(!t.text().isBlank(), "refused.emptyText");
        } else if (fact instanceof Fact.Compared c) {
            require(!c.left().isBlank() && !c.right().isBlank(), "refused.emptyText");
        }
    }

    // ---- does the fact answer what is asked?

    private static boolean fitsDemand(Demand d, Fact fact) {
        if (d instanceof Demand.AnswerPrecondition p) {
            return fact instanceof Fact.PreconditionAnswered a && a.precondition().equals(p.precondition().name());
        } else if (d instanceof Demand.AcknowledgeHazard h) {
            return fact instanceof Fact.HazardAcknowledged a && a.hazard().equals(h.hazard().name());
        } else if (d instanceof Demand.NameInstrument i) {
            return fact instanceof Fact.InstrumentNamed a && a.instrument().equals(i.instrument().name());
        } else if (d instanceof Demand.Switch w) {
            return fact instanceof Fact.Switched a && a.item().equals(w.item()) && a.live() == w.live();
        } else if (d instanceof Demand.PressMark m) {
            return fact instanceof Fact.Marked a && a.mark().equals(m.mark().id());
        } else if (d instanceof Demand.Release r) {
            return fact instanceof Fact.Released a && a.check().equals(r.check());
        } else if (d instanceof Demand.TellPower) {
            return fact instanceof Fact.PowerAnswered;
        } else if (d instanceof Demand.Look l) {
            return fact instanceof Fact.Looked a && a.stage().equals(l.soak().name());
        }
        return fitsCheck(d, fact);
    }

    private static boolean fitsCheck(Demand d, Fact fact) {
        if (d instanceof Demand.TakeMeasurement m) {
            return fact instanceof Fact.Measured a && a.check().equals(m.measure().id());
        } else if (d instanceof Demand.ReadCell c) {
            return fact instanceof Fact.CellRead a && a.check().equals(c.grid().id()) && a.cell() == c.cell();
        } else if (d instanceof Demand.GiveReason r) {
            return fact instanceof Fact.ReasonGiven a && a.check().equals(r.check());
        } else if (d instanceof Demand.EnterText t) {
            return fact instanceof Fact.TextEntered a && a.check().equals(t.entry().id());
        } else if (d instanceof Demand.EnterFaultLog f) {
            return fact instanceof Fact.FaultLogEntered a && a.check().equals(f.entry().id());
        } else if (d instanceof Demand.ConfirmStatement c) {
            return fact instanceof Fact.Confirmed a && a.check().equals(c.confirm().id());
        } else if (d instanceof Demand.CompareEntries c) {
            return fact instanceof Fact.Compared a && a.check().equals(c.compare().id());
        } else if (d instanceof Demand.AttachFile f) {
            return fact instanceof Fact.Attached a && a.check().equals(f.attach().id());
        } else if (d instanceof Demand.ConfirmItem i) {
            return fact instanceof Fact.ItemConfirmed a && a.check().equals(i.choose().id()) && a.item().equals(i.item().name());
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
        if (fact instanceof Fact.ToneGiven t) {
            return toneToCome(s, t).isPresent();
        }
        return fact instanceof Fact.Seen a && Demands.group(s).stream().anyMatch(e -> e.id().equals(a.check()))
                && !s.progress().seen().containsKey(a.check())
                && Demands.tonesToCome(s).stream().noneMatch(t -> t.expect().id().equals(a.check()));
    }

    private static Optional<Demands.ToneToCome> toneToCome(RunState s, Fact.ToneGiven t) {
        return Demands.tonesToCome(s).stream().filter(c -> c.expect().id().equals(t.check()) && c.tone() == t.tone()).findFirst();
    }

    // ---- is its content good?

    private static void tone(RunState s, Fact.ToneGiven t, Moment moment) throws RefusedException {
        Demands.ToneToCome due = toneToCome(s, t).orElseThrow();
        boolean opensFirst = t.tone() == Tone.OPENS || s.progress().opened().contains(t.check());
        Moment marked = s.marks().get(due.expect().window().mark());
        require(opensFirst && marked != null, "refused.notAsked", t.check());
        require(moment.since(marked).compareTo(due.after()) >= 0, "refused.tooEarly");
    }

    private static void release(RunState s, Demand.Release demand, Fact.Released r, Actor actor) throws RefusedException {
        boolean another = s.workers().stream().noneMatch(id -> id.equalsIgnoreCase(r.by().id())) && !r.by().id().isBlank();
        require(another, "refused.ownRelease", r.by().id());
        boolean entitled = demand.by() == r.by().role() || demand.by() == Role.SECOND_PERSON && r.by().role() == Role.SUPERVISOR;
        require(entitled, "refused.role", Words.of("role." + demand.by().name()));
        require(!actor.id().isBlank(), "refused.emptyText");
    }

    private static void instrument(InstrumentSpec spec, Fact.InstrumentNamed i) throws RefusedException {
        require(!i.asset().isBlank(), "refused.emptyText");
        require(i.coverage().signum() > 0, "refused.coverage");
        if (spec.maxUncertainty().isEmpty()) {
            return;
        }
        Quantity most = spec.maxUncertainty().get();
        Quantity has = i.uncertainty().orElseThrow(() -> refused("refused.noUncertainty", i.asset(), most));
        require(has.unit().sameDimension(most.unit()), "refused.dimension", has, most.unit().word());
        require(has.value().signum() >= 0, "refused.negativeUncertainty", has);
        BigDecimal standardised = has.exactIn(most.unit()).multiply(spec.coverage());
        boolean fine = standardised.compareTo(most.value().multiply(i.coverage())) <= 0;
        require(fine, "refused.uncertainty", i.asset(), has, i.coverage().toPlainString(), most, spec.coverage().toPlainString());
    }

    private static void look(SoakStage soak, Fact.Looked l) throws RefusedException {
        require(l.answer() != Fact.Sight.NOT_LOOKING, "refused.look");
        require(l.readings().size() == soak.conditions().size(), "refused.noReading");
        for (int i = 0; i < l.readings().size(); i++) {
            require(l.readings().get(i).condition().equals(soak.conditions().get(i).name()), "refused.noReading");
            dimension(soak.conditions().get(i).limits(), l.readings().get(i).value());
        }
    }

    private static void dimension(Limits limits, Quantity value) throws RefusedException {
        require(limits.unit().sameDimension(value.unit()), "refused.dimension", value, limits.unit().word());
    }

    private static void require(boolean fine, String key, Object... arguments) throws RefusedException {
        if (!fine) {
            throw refused(key, arguments);
        }
    }

    private static RefusedException refused(String key, Object... arguments) {
        return new RefusedException(Words.of(key, arguments));
    }
}
