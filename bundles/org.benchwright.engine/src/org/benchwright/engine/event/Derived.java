package org.benchwright.engine.event;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.core.Verdict;

/** What follows from facts and plan alone. Verification derives it again and compares. */
public sealed interface Derived extends EventBody {

    /** A precondition has aged, or power was lost: it is asked again. */
    record PreconditionExpired(String precondition) implements Derived {
    }

    /** A step was opened; visits count from 1. */
    record StepOpened(String stage, String step, int visit) implements Derived {
    }

    /** A waiting time began. */
    record WaitBegan(String check) implements Derived {
    }

    /**
     * A check was decided.
     *
     * @param check   its id
     * @param outcome what it came to
     * @param numbers the rule and the numbers of a measurement, where it was one
     * @param words   the decision in plain words
     */
    record CheckDecided(String check, Outcome outcome, Optional<Numbers> numbers, String words) implements Derived {
    }

    /** What a check, step or soak came to. */
    enum Outcome {
        CONFORMS, DOES_NOT_CONFORM, UNDECIDED,
        /** Did not conform, and somebody entitled released it. */
        RELEASED
    }

    /**
     * The numbers of a decision, all in the unit of the limits.
     *
     * @param rule        the decision rule
     * @param value       the value decided on
     * @param limits      in words
     * @param uncertainty expanded uncertainty used
     * @param margin      to the nearest limit, negative outside
     */
    record Numbers(String rule, String value, String limits, String uncertainty, String margin) {
    }

    /** All checks of a step are decided. */
    record StepDecided(String stage, String step, Outcome outcome) implements Derived {
    }

    /**
     * A check or step is carried out again.
     *
     * @param check   the check's id, empty for the whole step
     * @param reason  why
     * @param count   from 1
     */
    record Repeated(String stage, String step, String check, String reason, int count) implements Derived {
    }

    /** The test goes on at another place than the next in order. */
    record Moved(String stage, String step, String because) implements Derived {
    }

    /**
     * A soak began.
     *
     * @param attempt from 1
     * @param nextDue wall time from now until the next look is due
     */
    record SoakBegun(String stage, int attempt, Duration nextDue) implements Derived {
    }

    /**
     * A look was good.
     *
     * @param witnessed time that now counts as evidence
     * @param nextDue   time from now until the next look is due
     */
    record SoakWitnessed(String stage, Duration witnessed, Duration nextDue) implements Derived {
    }

    /**
     * A soak ended.
     *
     * @param witnessed time that counts as evidence
     * @param words     what it proved, or between which looks it stopped
     */
    record SoakEnded(String stage, Outcome outcome, Duration witnessed, String words) implements Derived {
    }

    /** The work departed from the procedure. */
    record DepartureNoted(DepartureKind kind, String words) implements Derived {
    }

    /** The unit does not conform. */
    record NonconformityNoted(String stage, String step, String words) implements Derived {
    }

    /** The test is going to end; it is made safe first. */
    record ConclusionReached(Verdict verdict, String reason) implements Derived {
    }

    /** Every step of make safe is done. */
    record MadeSafe() implements Derived {
    }

    /** The end of a test. */
    record Concluded(Verdict verdict, String reason) implements Derived {
    }

    /** The end of a rehearsal, which has no verdict. */
    record RehearsalEnded(Verdict wouldBe, String reason) implements Derived {
    }
}
