package org.benchwright.engine.tests;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.engine.Demand;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;

/**
 * A test whose answers come from a tape: mostly good ones, among them bad, late and void ones, slips, notes, proofs of the bench, interruptions
 * with and without power, clock steps, and the make-safe key. Where the tape ends, everything is answered well.
 */
final class RandomWalk {

    private static final List<Duration> PAUSES = List.of(Duration.ZERO, Duration.ofSeconds(1), Duration.ofSeconds(2), Duration.ofSeconds(30),
            Duration.ofMinutes(2), Duration.ofMinutes(15), Duration.ofHours(3), Duration.ofHours(13), Duration.ofHours(27));

    private final Choices choices;
    private final Walk walk;
    /** One answer in so many is bad. */
    private final int bad;
    /** In so many facts about five are no answers. */
    private final int calm;
    private final RandomWatch watch;

    RandomWalk(Plan plan, Choices choices) {
        this.choices = choices;
        this.walk = choices.oneIn(4) ? Walk.rehearse(plan) : Walk.open(plan);
        this.bad = choices.of(List.of(20, 8, 3));
        this.watch = new RandomWatch(choices);
        this.calm = choices.of(List.of(60, 30, 16));
    }

    Walk walk() {
        return walk;
    }

    boolean ended() {
        return walk.run().ended();
    }

    /** Lets some time pass and tells one fact that the test takes. */
    void next() {
        if (choices.exhausted()) {
            // Looks alone do not end a soak of a unit that restarts by itself while a watch says that it sees.
            if (!watched() || !watch.end(walk, walk.run().soakUnderWay().orElseThrow())) {
                good();
            }
            return;
        }
        if (watched() && !choices.oneIn(4)) {
            watch.tell(walk, walk.run().soakUnderWay().orElseThrow());
            return;
        }
        switch (choices.below(calm)) {
            case 11 -> walk.tell(new Fact.Noted("A remark."));
            case 12 -> strikeOrGood();
            case 13 -> walk.interrupt(choices.of(List.of("0 s", "1 s", "3 s", "40 min", "14 h")));
            case 14 -> walk.after(choices.of(PAUSES)).stepWallClock(choices.of(List.of(Duration.ofHours(-5), Duration.ofDays(3))));
            case 15 -> abandonOrGood();
            case 16 -> proveOrGood();
            default -> answer();
        }
    }

    private boolean watched() {
        return walk.run().soakUnderWay().flatMap(SoakStage::watch).isPresent();
    }

    private void strikeOrGood() {
        Optional<Long> last = walk.run().strikeable().map(TestEvent::sequence);
        if (last.isPresent()) {
            walk.tell(new Fact.Struck(last.get()));
        } else {
            good();
        }
    }

    private void abandonOrGood() {
        Fact key = new Fact.Abandoned("bench needed");
        if (choices.oneIn(4) && taken(key)) {
            walk.tell(key);
        } else {
            good();
        }
    }

    private void answer() {
        boolean punctual = !choices.oneIn(bad);
        if (punctual) {
            Answers.waiting(walk.demand(), walk.moment()).ifPresent(walk::after);
        } else {
            walk.after(choices.of(PAUSES));
        }
        Fact fact = choices.oneIn(bad) ? bad(walk.demand()) : Answers.good(walk.demand());
        if (taken(fact)) {
            walk.tell(fact);
        } else {
            good();
        }
    }

    /** Whoever answers well proves the bench before, where something is to be switched on that waits for it. */
    private void good() {
        if (walk.run().benchProofOwed(walk.moment().instant()).isPresent()) {
            walk.tell(proof(walk.run().plan().needsBenchProvedWithin().orElseThrow()));
        }
        walk.good();
    }

    private void proveOrGood() {
        Fact proof = proof(Duration.ofMinutes(5));
        if (taken(proof)) {
            walk.tell(proof);
        } else {
            good();
        }
    }

    /** That the bench was proved just now or as long ago as may be; it holds to this moment or on. */
    private Fact proof(Duration longest) {
        Instant now = walk.moment().instant();
        return Answers.proof(now, choices.of(List.of(Duration.ZERO, longest)),
                choices.of(List.of(Duration.ofHours(1), Duration.ZERO, Duration.ofSeconds(1))));
    }

    private boolean taken(Fact fact) {
        try {
            walk.run().record(fact, Walk.teller(fact), walk.moment());
            return true;
        } catch (RefusedException refused) {
            return false; // such as a tone before its time: asked for again, and then answered well
        }
    }

    /** An answer that a bad unit or a hurried technician would give, where there is one. */
    private Fact bad(Demand d) {
        if (d instanceof Demand.AnswerPrecondition p) {
            boolean met = choices.oneIn(2);
            return new Observation.PreconditionAnswered(p.precondition().name(), met, "7", p.precondition().reading().map(Answers::outside));
        } else if (d instanceof Demand.AnswerExpectation e) {
            return new Observation.Seen(e.expect().id(), choices.of(List.of(Sight.NO, Sight.NOT_LOOKING)), "dark");
        } else if (d instanceof Demand.TakeMeasurement m) {
            return Answers.measured(m, Quantity.of(choices.of(List.of("24.48", "24.52", "23.5", "23.46", "24.45", "30", "-2")), "V"));
        } else if (d instanceof Demand.ReadCell c) {
            Quantity applied = c.at().stream().flatMap(v -> v.quantity().stream()).findFirst().orElseThrow();
            Quantity shown = applied.plus(Quantity.of(choices.of(List.of("0.013", "0.016", "-0.02", "-0.021", "1")), "mA"));
            return new Observation.CellRead(c.grid().id(), c.cell(), shown.toString(), shown);
        } else if (d instanceof Demand.ConfirmStatement c) {
            return new Observation.Confirmed(c.confirm().id(), false);
        } else if (d instanceof Demand.CompareEntries c) {
            return new Observation.Compared(c.compare().id(), "C16-2DC", "C16-2AC");
        } else if (d instanceof Demand.ConfirmItem i) {
            return new Observation.ItemConfirmed(i.choose().id(), i.item().name(), false);
        } else if (d instanceof Demand.Release r) {
            return new Fact.Released(r.check(), Answers.releaser(choices.oneIn(2) ? Role.SUPERVISOR : r.by()), false);
        } else if (d instanceof Demand.Look l) {
            return Answers.look(l.soak(), choices.of(List.of(Sight.YES, Sight.NO)), choices.oneIn(2));
        } else if (d instanceof Demand.TellPower) {
            return new Fact.PowerAnswered(false);
        }
        return Answers.good(d);
    }
}
