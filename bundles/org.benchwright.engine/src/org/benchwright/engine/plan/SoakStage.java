package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;

/**
 * A long run under observation by looks.
 *
 * @param name                  its name
 * @param title                 its title
 * @param hazards               names of the hazards shown before it
 * @param lasting               witnessed time that is needed
 * @param keep                  the mode that the unit must keep, with what shows it
 * @param conditions            what must hold around it for a stop to be charged to the unit
 * @param lookEvery             longest time from one look to the next
 * @param lookTolerance         a look later than due by more is a departure
 * @param gap                   how much unwitnessed time is borne, where stated
 * @param stopped               where a stop leads
 * @param stoppedOutside        where a stop outside the conditions leads
 * @param watch                 what unattended observation was asked for
 */
public record SoakStage(String name, String title, List<String> hazards, Duration lasting, Signal.ModeShows keep,
        List<Condition> conditions, Duration lookEvery, Duration lookTolerance, Optional<Gap> gap, Move stopped, Move stoppedOutside,
        Optional<Watch> watch) implements Stage {

    private static final Move POWER_LOST = new Move.Conclude(Verdict.UNDECIDED, "");

    public SoakStage {
        hazards = List.copyOf(hazards);
        conditions = List.copyOf(conditions);
    }

    /**
     * Where a loss of power leads. The unit has to be powered up anew, so the soak can only begin again, and before it the steps from the
     * last one that began with everything off; or the test ends. Any other way leads to steps that assume a live unit.
     *
     * @return a {@link Move.BeginAgain}, whose bound leads to another of the two, or a {@link Move.Conclude}; its reason may be empty
     */
    public Move onPowerLost() {
        return gap.map(borne -> poweredUpAnew(borne.instead())).orElse(POWER_LOST);
    }

    private static Move poweredUpAnew(Move instead) {
        if (instead instanceof Move.BeginAgain again) {
            return new Move.BeginAgain(new Move.Bound(again.bound().atMost(), poweredUpAnew(again.bound().instead())));
        }
        return instead instanceof Move.Conclude ? instead : POWER_LOST;
    }

    /**
     * Unwitnessed time borne at most, and what a longer one leads to.
     *
     * @param atMost  longest gap
     * @param instead what happens when it was longer
     */
    public record Gap(Duration atMost, Move instead) {
    }

    /**
     * Unattended observation as the procedure asks for it.
     *
     * @param every        sampling interval
     * @param stopAfterBad bad samples in a row that make a stop
     * @param silentAfter  missed samples in a row that make silence
     * @param instead      what it makes unnecessary while it goes on, such as {@code looks}
     */
    public record Watch(Duration every, int stopAfterBad, int silentAfter, Optional<String> instead) {

        /** A watch beside the looks. */
        public Watch(Duration every, int stopAfterBad, int silentAfter) {
            this(every, stopAfterBad, silentAfter, Optional.empty());
        }
    }
}
