package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.SoakStage;

/** Facts that answer a demand. */
final class Answers {

    private Answers() {
    }

    /** Time that has to pass before the demand can be answered well. */
    static Optional<Duration> waiting(Demand demand, Moment now) {
        Optional<Duration> total = Optional.empty();
        Moment since = now;
        if (demand instanceof Demand.AwaitTone t) {
            total = Optional.of(t.after());
            since = t.marked();
        } else if (demand instanceof Demand.AwaitTime t) {
            total = Optional.of(t.time().time());
            since = t.began();
        } else if (demand instanceof Demand.Look l) {
            total = Optional.of(l.due());
            since = l.since();
        }
        Duration passed = now.since(since);
        return total.map(t -> t.minus(passed)).filter(left -> !left.isNegative());
    }

    /** That the bench was proved so long before, and stays so for a while. */
    static Fact.BenchProved proof(Instant now, Duration ago, Duration lasting) {
        return new Fact.BenchProved("T-AAAAA-AAAAA", 7, now.minus(ago), now.plus(lasting));
    }

    /** What a good unit and a careful technician answer. */
    static Fact good(Demand d) {
        if (d instanceof Demand.AnswerPrecondition p) {
            return new Observation.PreconditionAnswered(p.precondition().name(), true, p.precondition().text().map(t -> "7").orElse(""),
                    p.precondition().reading().map(Answers::inside));
        } else if (d instanceof Demand.AcknowledgeHazard h) {
            return new Fact.HazardAcknowledged(h.hazard().name());
        } else if (d instanceof Demand.NameInstrument i) {
            return new Observation.InstrumentNamed(i.instrument().name(), "M-102", i.instrument().maxUncertainty(), BigDecimal.valueOf(2),
                    Optional.empty());
        } else if (d instanceof Demand.Switch w) {
            return new Fact.Switched(w.item(), w.live());
        } else if (d instanceof Demand.PressMark m) {
            return new Fact.Marked(m.mark().id());
        } else if (d instanceof Demand.AwaitTone t) {
            return new Fact.ToneGiven(t.expect().id(), t.tone());
        } else if (d instanceof Demand.AwaitTime t) {
            return new Fact.WaitElapsed(t.time().id());
        } else if (d instanceof Demand.Look l) {
            return look(l.soak(), Sight.YES, true);
        } else if (d instanceof Demand.TellPower) {
            return new Fact.PowerAnswered(true);
        }
        return goodEntry(d);
    }

    private static Fact goodEntry(Demand d) {
        if (d instanceof Demand.AnswerExpectation e) {
            return new Observation.Seen(e.expect().id(), Sight.YES, "");
        } else if (d instanceof Demand.TakeMeasurement m) {
            return measured(m, inside(m.measure().limits()));
        } else if (d instanceof Demand.ReadCell c) {
            Quantity shown = c.at().stream().flatMap(v -> v.quantity().stream()).findFirst().orElseThrow();
            return new Observation.CellRead(c.grid().id(), c.cell(), shown.toString(), shown);
        } else if (d instanceof Demand.GiveReason r) {
            return new Observation.ReasonGiven(r.check(), "The reading was restless.");
        } else if (d instanceof Demand.EnterText t) {
            return new Observation.TextEntered(t.entry().id(), "none");
        } else if (d instanceof Demand.EnterFaultLog f) {
            return new Observation.FaultLogEntered(f.entry().id(), List.of(new Observation.FaultLine("W01", "07:12")));
        } else if (d instanceof Demand.ConfirmStatement c) {
            return new Observation.Confirmed(c.confirm().id(), true);
        } else if (d instanceof Demand.CompareEntries c) {
            return new Observation.Compared(c.compare().id(), "C16-2 DC", "c16-2dc");
        } else if (d instanceof Demand.AttachFile f) {
            return new Observation.Attached(f.attach().id(), Digest.of("photo".getBytes(StandardCharsets.UTF_8)), "plate.jpg");
        } else if (d instanceof Demand.ConfirmItem i) {
            return new Observation.ItemConfirmed(i.choose().id(), i.item().name(), true);
        } else if (d instanceof Demand.Release r) {
            return new Fact.Released(r.check(), releaser(r.by()), true);
        } else if (d instanceof Demand.Apply a) {
            return new Fact.Applied(a.apply().id());
        }
        throw new AssertionError("nothing answers " + d);
    }

    static Actor releaser(Role role) {
        return role == Role.SUPERVISOR ? Walk.SUPERVISOR : Walk.SECOND;
    }

    static Fact measured(Demand.TakeMeasurement m, Quantity value) {
        return new Observation.Measured(m.measure().id(), value.toString(), value);
    }

    static Observation.Measured volts(String check, String number) {
        return new Observation.Measured(check, number, Quantity.of(number, "V"));
    }

    static Observation.Looked look(SoakStage soak, Sight answer, boolean insideConditions) {
        return new Observation.Looked(soak.name(), answer, "",
                soak.conditions().stream().map(c -> reading(c, insideConditions ? inside(c.limits()) : outside(c.limits()))).toList());
    }

    private static Observation.ConditionReading reading(Condition condition, Quantity value) {
        return new Observation.ConditionReading(condition.name(), value.toString(), value);
    }

    /** The middle of the limits. */
    static Quantity inside(Limits limits) {
        if (limits.lower().isEmpty()) {
            return limits.upper().orElseThrow();
        } else if (limits.upper().isEmpty()) {
            return limits.lower().orElseThrow();
        }
        BigDecimal sum = limits.lower().get().value().add(limits.upper().get().exactIn(limits.unit()));
        return new Quantity(sum.divide(BigDecimal.valueOf(2)), limits.unit());
    }

    /** As far outside as the limits are wide. */
    static Quantity outside(Limits limits) {
        BigDecimal upper = limits.upper().orElseThrow().exactIn(limits.unit());
        BigDecimal lower = limits.lower().map(l -> l.value()).orElse(BigDecimal.ZERO);
        return new Quantity(upper.add(upper.subtract(lower)), limits.unit());
    }
}
