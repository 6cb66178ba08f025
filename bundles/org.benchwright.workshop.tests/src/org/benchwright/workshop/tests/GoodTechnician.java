package org.benchwright.workshop.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.workshop.Sitting;

/** Answers every demand of {@link SamplePlan} as a good unit would have it, but for what a test tells otherwise by key. */
public final class GoodTechnician {

    private final MovedTime time;
    private final Map<String, Deque<Fact>> otherwise = new HashMap<>();

    /** At these clocks. */
    public GoodTechnician(MovedTime time) {
        this.time = time;
    }

    /** Answers a key once in another way. */
    public GoodTechnician but(String key, Fact fact) {
        otherwise.computeIfAbsent(key, k -> new ArrayDeque<>()).add(fact);
        return this;
    }

    /** Carries the test on until that key is asked, or to its end. */
    public void carryOnUntil(Sitting sitting, String key) throws Exception {
        while (!sitting.run().ended() && !sitting.run().demand().key().equals(key)) {
            sitting.record(next(sitting));
        }
    }

    /** Carries the test to its end. */
    public void carryToTheEnd(Sitting sitting) throws Exception {
        carryOnUntil(sitting, "");
    }

    /** The next fact; time passes as it must. */
    Fact next(Sitting sitting) {
        Demand demand = sitting.run().demand();
        time.advance(Duration.ofSeconds(1));
        Deque<Fact> other = otherwise.getOrDefault(demand.key(), new ArrayDeque<>());
        if (demand instanceof Demand.AwaitTone d) {
            time.advance(d.after().minus(sitting.moment().since(d.marked())));
            return new Fact.ToneGiven(d.expect().id(), d.tone());
        } else if (demand instanceof Demand.AwaitTime d) {
            time.advance(d.time().time());
            return new Fact.WaitElapsed(d.time().id());
        } else if (demand instanceof Demand.Look d) {
            time.advance(d.due());
        }
        return other.isEmpty() ? answer(demand) : other.poll();
    }

    private static Fact answer(Demand demand) {
        if (demand instanceof Demand.AnswerPrecondition d) {
            boolean reading = d.precondition().reading().isPresent();
            return new Observation.PreconditionAnswered(d.precondition().name(), true, reading ? "" : "4711",
                    reading ? Optional.of(Quantity.of("22.5", "degC")) : Optional.empty());
        } else if (demand instanceof Demand.AcknowledgeHazard d) {
            return new Fact.HazardAcknowledged(d.hazard().name());
        } else if (demand instanceof Demand.NameInstrument d) {
            return new Observation.InstrumentNamed(d.instrument().name(), "M-17", Optional.of(Quantity.of("0.02", "V")), BigDecimal.valueOf(2),
                    Optional.of(LocalDate.of(2027, 3, 1)));
        } else if (demand instanceof Demand.Switch d) {
            return new Fact.Switched(d.item(), d.live());
        } else if (demand instanceof Demand.PressMark d) {
            return new Fact.Marked(d.mark().id());
        } else if (demand instanceof Demand.AnswerExpectation d) {
            return new Observation.Seen(d.expect().id(), Sight.YES, "");
        } else if (demand instanceof Demand.TakeMeasurement d) {
            String volts = d.measure().limits().contains(Quantity.of("0.4", "V")) ? "0.4" : "24.02";
            return new Observation.Measured(d.measure().id(), volts + "V", Quantity.of(volts, "V"));
        } else if (demand instanceof Demand.Look d) {
            return looked(d, Sight.YES);
        } else if (demand instanceof Demand.TellPower) {
            return new Fact.PowerAnswered(false);
        }
        return entry(demand);
    }

    static Fact looked(Demand.Look d, Sight sight) {
        return new Observation.Looked(d.soak().name(), sight, "", List.of(
                new Observation.ConditionReading("ambient", "22 degC", Quantity.of("22", "degC")),
                new Observation.ConditionReading("supply", "24,0V", Quantity.of("24.0", "V"))));
    }

    private static Fact entry(Demand demand) {
        if (demand instanceof Demand.EnterText d) {
            return new Observation.TextEntered(d.entry().id(), "none");
        } else if (demand instanceof Demand.EnterFaultLog d) {
            return new Observation.FaultLogEntered(d.entry().id(), List.of(new Observation.FaultLine("W01", "Watchdog expired")));
        } else if (demand instanceof Demand.ConfirmStatement d) {
            return new Observation.Confirmed(d.confirm().id(), true);
        } else if (demand instanceof Demand.CompareEntries d) {
            return new Observation.Compared(d.compare().id(), "TC16", "TC16");
        } else if (demand instanceof Demand.AttachFile d) {
            return new Observation.Attached(d.attach().id(), Digest.of(new byte[] {1}), "plate.jpg");
        } else if (demand instanceof Demand.ConfirmItem d) {
            return new Observation.ItemConfirmed(d.choose().id(), d.item().name(), true);
        } else if (demand instanceof Demand.GiveReason d) {
            return new Observation.ReasonGiven(d.check(), "The reading was restless.");
        } else if (demand instanceof Demand.Apply d) {
            return new Fact.Applied(d.apply().id());
        } else if (demand instanceof Demand.ReadCell d) {
            Quantity shown = d.at().get(d.at().size() - 1).quantity().orElseThrow();
            return new Observation.CellRead(d.grid().id(), d.cell(), shown.toString(), shown);
        } else if (demand instanceof Demand.Release d) {
            return new Fact.Released(d.check(), new Actor("GW", d.by()), true);
        }
        throw new AssertionError("no answer to " + demand);
    }
}
