package org.benchwright.engine;

import java.time.Duration;
import java.util.List;

import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;

/**
 * What the test needs next. There is always exactly one demand; the fact that answers it is named in each case. Besides it, a note,
 * a strike of the last observation and the make-safe key are always possible.
 */
public sealed interface Demand {

    /** A stable key for scripts and logs, such as {@code lamps.pwr}. */
    String key();

    /** Answered by {@code PreconditionAnswered}. */
    record AnswerPrecondition(Precondition precondition) implements Demand {
        @Override
        public String key() {
            return "precondition." + precondition.name();
        }
    }

    /** Answered by {@code HazardAcknowledged}. */
    record AcknowledgeHazard(Hazard hazard) implements Demand {
        @Override
        public String key() {
            return "hazard." + hazard.name();
        }
    }

    /** Answered by {@code InstrumentNamed}. */
    record NameInstrument(InstrumentSpec instrument) implements Demand {
        @Override
        public String key() {
            return "instrument." + instrument.name();
        }
    }

    /** Answered by {@code Switched}. */
    record Switch(Place place, String item, boolean live) implements Demand {
        @Override
        public String key() {
            return place.key(item + (live ? ".on" : ".off"));
        }
    }

    /** Answered by {@code Marked}. */
    record PressMark(Place place, Action.Mark mark) implements Demand {
        @Override
        public String key() {
            return place.key(mark.id());
        }
    }

    /**
     * Answered by {@code ToneGiven}, once {@code after} has passed since {@code marked}.
     *
     * @param marked the mark that the deadline counts from
     * @param after  time from the mark to the tone
     */
    record AwaitTone(Place place, Action.Expect expect, Tone tone, Moment marked, Duration after) implements Demand {
        @Override
        public String key() {
            return place.key(expect.id() + ".tone");
        }
    }

    /** Answered by {@code Seen}. */
    record AnswerExpectation(Place place, Action.Expect expect) implements Demand {
        @Override
        public String key() {
            return place.key(expect.id());
        }
    }

    /**
     * Answered by {@code Measured}.
     *
     * @param earlier readings of this check that were undecided
     */
    record TakeMeasurement(Place place, Action.Measure measure, List<Quantity> earlier) implements Demand {
        @Override
        public String key() {
            return place.key(measure.id());
        }
    }

    /** Answered by {@code CellRead}. */
    record ReadCell(Place place, Action.Grid grid, int cell, List<Action.AxisValue> at) implements Demand {
        @Override
        public String key() {
            return place.key(grid.id());
        }
    }

    /** Answered by {@code ReasonGiven}. */
    record GiveReason(Place place, String check, String because) implements Demand {
        @Override
        public String key() {
            return place.key(check + ".reason");
        }
    }

    /** Answered by {@code TextEntered}. */
    record EnterText(Place place, Action.EnterText entry) implements Demand {
        @Override
        public String key() {
            return place.key(entry.id());
        }
    }

    /** Answered by {@code FaultLogEntered}. */
    record EnterFaultLog(Place place, Action.EnterFaultLog entry) implements Demand {
        @Override
        public String key() {
            return place.key(entry.id());
        }
    }

    /** Answered by {@code Confirmed}. */
    record ConfirmStatement(Place place, Action.Confirm confirm) implements Demand {
        @Override
        public String key() {
            return place.key(confirm.id());
        }
    }

    /** Answered by {@code Compared}. */
    record CompareEntries(Place place, Action.Compare compare) implements Demand {
        @Override
        public String key() {
            return place.key(compare.id());
        }
    }

    /** Answered by {@code Attached}. */
    record AttachFile(Place place, Action.Attach attach) implements Demand {
        @Override
        public String key() {
            return place.key(attach.id());
        }
    }

    /**
     * Answered by {@code ItemConfirmed}.
     *
     * @param chosen true: it is to be done to the item; false: the item is spared
     */
    record ConfirmItem(Place place, Action.Choose choose, Action.Choose.Item item, boolean chosen) implements Demand {
        @Override
        public String key() {
            return place.key(choose.id() + "." + item.name());
        }
    }

    /** Answered by {@code Released}. */
    record Release(Place place, String check, Role by, String statement) implements Demand {
        @Override
        public String key() {
            return place.key(check + ".release");
        }
    }

    /** Answered by {@code Applied}. */
    record Apply(Place place, Action.Apply apply) implements Demand {
        @Override
        public String key() {
            return place.key(apply.id());
        }
    }

    /** Answered by {@code WaitElapsed}, once the time has passed since {@code began}. */
    record AwaitTime(Place place, Action.Wait time, Moment began) implements Demand {
        @Override
        public String key() {
            return place.key(time.id());
        }
    }

    /**
     * Answered by {@code Looked}.
     *
     * @param begins    true for the look that begins the soak
     * @param since     the last good look, by the wall clock as it was set since; for the first look the moment of arrival
     * @param due       time from {@code since} until the look is due, zero for the first
     * @param witnessed time witnessed so far
     */
    record Look(SoakStage soak, boolean begins, Moment since, Duration due, Duration witnessed) implements Demand {
        @Override
        public String key() {
            return soak.name() + (begins ? ".begin" : ".look");
        }
    }

    /**
     * Answered by {@code PowerAnswered}: did the unit keep its power while nobody worked on the test?
     *
     * @param live what was live
     */
    record TellPower(List<String> live) implements Demand {
        @Override
        public String key() {
            return "power";
        }
    }

    /**
     * Nothing is left to do.
     *
     * @param outcome   the verdict, or for a rehearsal what it would have been
     * @param reason    why
     * @param rehearsal true: {@code outcome} is no verdict
     */
    record Nothing(Verdict outcome, String reason, boolean rehearsal) implements Demand {
        @Override
        public String key() {
            return "end";
        }
    }
}
