package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.refused;
import static org.benchwright.engine.internal.Refusals.require;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.SoakStage;

/** Whether the content of a fact is good, once it answers what is asked. */
final class ContentGate {

    private ContentGate() {
    }

    static void check(RunState s, Demand demand, Fact fact, Moment moment) throws RefusedException {
        if (fact instanceof Fact.ToneGiven t) {
            tone(s, t, moment);
        } else if (fact instanceof Fact.WaitElapsed) {
            Stamp began = s.progress().waiting().orElseThrow();
            passed(s.age().at(moment).minus(began.age()), ((Demand.AwaitTime) demand).time().time());
        } else if (fact instanceof Fact.Released r) {
            release(s, (Demand.Release) demand, r);
        } else if (fact instanceof Observation.InstrumentNamed i) {
            instrument(s, ((Demand.NameInstrument) demand).instrument(), i, moment);
        } else if (fact instanceof Observation.Looked l) {
            look(((Demand.Look) demand).soak(), l);
        } else if (fact instanceof Observation.PreconditionAnswered p) {
            precondition((Demand.AnswerPrecondition) demand, p);
        } else if (fact instanceof Observation.Measured m) {
            Demand.TakeMeasurement asked = (Demand.TakeMeasurement) demand;
            dimension(asked.measure().limits().unit(), m.value());
            asTyped(m.raw(), m.value(), asked.measure().unit());
        } else if (fact instanceof Observation.CellRead c) {
            UnitOfMeasure unit = ((Demand.ReadCell) demand).grid().unit();
            dimension(unit, c.value());
            asTyped(c.raw(), c.value(), unit);
        } else if (fact instanceof Fact.Questioned q) {
            questioned(demand, q);
        } else if (fact instanceof Observation.Tapped t) {
            Flashes.check(Flashes.tappedAlong(s, t.check()), t);
        } else if (fact instanceof Fact.HazardKnown k) {
            known(s, ((Demand.AcknowledgeHazard) demand).hazard(), k, moment);
        } else {
            entry(fact);
        }
    }

    private static void questioned(Demand demand, Fact.Questioned q) throws RefusedException {
        UnitOfMeasure unit = demand instanceof Demand.TakeMeasurement m ? m.measure().unit() : ((Demand.ReadCell) demand).grid().unit();
        dimension(unit, q.value());
        asTyped(q.raw(), q.value(), unit);
        require(Slips.instead(demand, q.value()).equals(Optional.of(q.instead())), "refused.noSlip", q.value());
    }

    /** Whether it was read there is for whoever has that record. */
    private static void known(RunState s, Hazard hazard, Fact.HazardKnown k, Moment moment) throws RefusedException {
        Duration ago = Duration.between(k.instant(), moment.instant());
        boolean fresh = s.opening().shift().filter(shift -> !ago.isNegative() && ago.compareTo(shift) <= 0).isPresent();
        require(hazard.signal() != SignalWord.DANGER && fresh && k.event() > 0, "refused.hazardUnknown", hazard.name());
    }

    private static void entry(Fact fact) throws RefusedException {
        if (fact instanceof Observation.ReasonGiven r) {
            require(!r.reason().isBlank(), "refused.noReason");
        } else if (fact instanceof Observation.TextEntered t) {
            require(!t.text().isBlank(), "refused.emptyText");
        } else if (fact instanceof Observation.Compared c) {
            require(!c.left().isBlank() && !c.right().isBlank(), "refused.emptyText");
        } else if (fact instanceof Observation.FaultLogEntered f) {
            require(f.lines().stream().noneMatch(line -> line.code().isBlank()), "refused.faultCode");
        } else if (fact instanceof Observation.Attached a) {
            boolean plain = !a.name().isBlank() && a.name().chars().noneMatch(c -> c == '/' || c == '\\' || Character.isISOControl(c));
            require(plain, "refused.fileName", a.name());
        }
    }

    private static void tone(RunState s, Fact.ToneGiven t, Moment moment) throws RefusedException {
        Expectations.ToneToCome due = Expectations.toneToCome(s, t).orElseThrow();
        require(t.tone() == Tone.OPENS || s.progress().opened().contains(t.check()), "refused.notAsked", t.check());
        passed(s.age().at(moment), due.due());
    }

    private static void passed(Duration time, Duration needed) throws RefusedException {
        require(time.compareTo(needed) >= 0, "refused.tooEarly");
    }

    private static void release(RunState s, Demand.Release demand, Fact.Released r) throws RefusedException {
        require(!s.people().haveWorked(r.by()), "refused.ownRelease", r.by().id());
        boolean entitled = demand.by() == r.by().role() || demand.by() == Role.SECOND_PERSON && r.by().role() == Role.SUPERVISOR;
        require(entitled, "refused.role", Words.of("role." + demand.by().name()));
    }

    private static void precondition(Demand.AnswerPrecondition demand, Observation.PreconditionAnswered p) throws RefusedException {
        Optional<Limits> reading = demand.precondition().reading();
        require(reading.isEmpty() || p.reading().isPresent(), "refused.noReading");
        if (reading.isPresent()) {
            dimension(reading.get().unit(), p.reading().get());
        }
        boolean textOwed = demand.precondition().text().isPresent() && p.met();
        require(!textOwed || !p.text().isBlank(), "refused.emptyText");
    }

    // ---- instruments

    private static void instrument(RunState s, InstrumentSpec spec, Observation.InstrumentNamed i, Moment moment) throws RefusedException {
        require(!i.asset().isBlank(), "refused.emptyText");
        Optional<LocalDate> late = Instruments.pastDue(i, moment.instant()).filter(due -> spec.refusedPastDue());
        require(late.isEmpty(), "refused.pastDue", i.asset(), late.map(LocalDate::toString).orElse(""));
        require(i.coverage().signum() > 0, "refused.coverage");
        if (i.entry().isPresent()) {
            RegisterRules.check(s.plan(), spec, i);
        }
        List<UnitOfMeasure> decided = Instruments.decidedIn(s.plan(), spec.name());
        if (i.uncertainty().isPresent()) {
            Quantity has = i.uncertainty().get();
            require(has.value().signum() >= 0, "refused.negativeUncertainty", has);
            require(!has.unit().hasOffset(), "refused.offset", has, has.unit().forDifferences().word());
            for (UnitOfMeasure unit : decided) {
                dimension(unit.forDifferences(), has);
            }
        }
        if (spec.maxUncertainty().isPresent()) {
            goodEnough(spec, i, spec.maxUncertainty().get());
        } else if (Instruments.guards(s.plan(), spec.name())) {
            require(i.uncertainty().isPresent(), "refused.guardNeedsUncertainty", i.asset());
        }
    }

    private static void goodEnough(InstrumentSpec spec, Observation.InstrumentNamed i, Quantity most) throws RefusedException {
        Quantity has = i.uncertainty().orElseThrow(() -> refused("refused.noUncertainty", i.asset(), most));
        dimension(most.unit(), has);
        UnitOfMeasure unit = has.unit().finer(most.unit());
        BigDecimal standardised = has.exactIn(unit).multiply(spec.coverage());
        boolean fine = standardised.compareTo(most.exactIn(unit).multiply(i.coverage())) <= 0;
        require(fine, "refused.uncertainty", i.asset(), has, i.coverage().toPlainString(), most, spec.coverage().toPlainString());
    }

    // ---- looks and readings

    private static void look(SoakStage soak, Observation.Looked l) throws RefusedException {
        require(l.answer() != Observation.Sight.NOT_LOOKING, "refused.look");
        require(l.readings().size() == soak.conditions().size(), "refused.noReading");
        for (int i = 0; i < l.readings().size(); i++) {
            Observation.ConditionReading reading = l.readings().get(i);
            UnitOfMeasure unit = soak.conditions().get(i).limits().unit();
            require(reading.condition().equals(soak.conditions().get(i).name()), "refused.noReading");
            dimension(unit, reading.value());
            asTyped(reading.raw(), reading.value(), unit);
        }
    }

    private static void dimension(UnitOfMeasure unit, Quantity value) throws RefusedException {
        require(unit.sameDimension(value.unit()), "refused.dimension", value, unit.word());
    }

    /** What was typed and what it is taken for are kept both; they must not tell two stories. */
    private static void asTyped(String raw, Quantity value, UnitOfMeasure bare) throws RefusedException {
        try {
            require(Quantity.parse(raw, bare).sameSize(value), "refused.asTyped", raw, value);
        } catch (QuantityFormatException e) {
            RefusedException refusal = refused("refused.asTyped", raw, value);
            refusal.initCause(e);
            throw refusal;
        }
    }
}
