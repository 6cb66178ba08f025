package org.benchwright.engine;

import static org.benchwright.engine.internal.Refusals.refused;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.core.Verdict;

/**
 * Where the unit of a sealed test is: on its way since a day, and back or not. Says which returns a test takes.
 *
 * @param since      the day (UTC) from which it is out: of its hand-over, or of its seal where no hand-over is on record
 * @param handedOver true if a hand-over is on record
 * @param returned   how it came back, if it did
 */
public record InTheField(LocalDate since, boolean handedOver, Optional<FieldReturn> returned) {

    /** Days are those of different clocks and zones: so many of them a date may seem too early or too late. */
    private static final long ZONES = 1;

    public InTheField {
        Objects.requireNonNull(since);
        Objects.requireNonNull(returned);
    }

    /**
     * Whether a unit counts as out there: it was handed over, or, as long as no hand-over is on record, accepted. A rehearsal never does.
     *
     * @param run a test that is sealed
     */
    public boolean counts(TestRun run) {
        return !run.rehearsal() && (handedOver || run.verdict().equals(Optional.of(Verdict.ACCEPTED)));
    }

    /**
     * The state after a return. A second entry may only say whether the fault of the first was confirmed.
     *
     * @param run   the test
     * @param back  how it came back
     * @param today the day (UTC) on which that is recorded
     * @throws RefusedException if the test does not take it: the unit is not out there, has been back, or the days cannot be
     */
    public InTheField with(TestRun run, FieldReturn back, LocalDate today) throws RefusedException {
        if (run.rehearsal()) {
            throw refused("return.rehearsal");
        } else if (!counts(run)) {
            throw refused("return.notAccepted", run.verdict().map(Verdict::word).orElse(""));
        } else if (back.complaint().isBlank()) {
            throw refused("return.noComplaint");
        } else if (back.on().isBefore(since.minusDays(ZONES))) {
            throw refused("return.tooEarly", back.on(), since);
        } else if (back.on().isAfter(today.plusDays(ZONES))) {
            throw refused("return.tooLate", back.on(), today);
        } else if (returned.isPresent() && !settles(returned.get(), back)) {
            throw refused("return.twice", returned.get().on());
        }
        return new InTheField(since, handedOver, Optional.of(back));
    }

    private static boolean settles(FieldReturn before, FieldReturn now) {
        return before.fault() == FieldReturn.Fault.NOT_LOOKED_FOR && now.fault() != FieldReturn.Fault.NOT_LOOKED_FOR
                && now.on().equals(before.on());
    }
}
