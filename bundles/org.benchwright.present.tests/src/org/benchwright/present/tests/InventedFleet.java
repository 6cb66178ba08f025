package org.benchwright.present.tests;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectedTest.State;
import org.benchwright.ledger.Projection;

/** Invented tests, the same for the same seed: units with early stops, a supply that drifts, three people on four stations. */
final class InventedFleet {

    private static final Instant BEGIN = Instant.parse("2026-01-05T08:00:00Z");
    private static final String[] PEOPLE = {"QN", "TB", "MK"};
    private static final int BATCH = 5000;

    private final Random random;
    private final int tests;

    InventedFleet(long seed, int tests) {
        this.random = new Random(seed);
        this.tests = tests;
    }

    void fill(Projection projection) throws LedgerException {
        List<ProjectedTest> batch = new ArrayList<>();
        for (int i = 0; i < tests; i++) {
            batch.add(test(i));
            if (batch.size() == BATCH) {
                projection.put(batch, Optional.empty());
                batch.clear();
            }
        }
        projection.put(batch, Optional.of(new Projection.Mark(tests, "invented", 1)));
    }

    private ProjectedTest test(int number) {
        Instant opened = BEGIN.plus(Duration.ofHours(5L * number));
        boolean rehearsal = random.nextInt(20) == 0;
        double stop = 900 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 0.6);
        boolean stopped = stop < 72;
        boolean supplyBad = random.nextInt(40) == 0;
        State state = rehearsal ? State.REHEARSAL : supplyBad ? State.UNDECIDED : stopped || random.nextInt(15) == 0 ? State.REJECTED
                : State.ACCEPTED;
        boolean again = number > 0 && random.nextInt(8) == 0;
        List<ProjectedTest.Cause> causes = new ArrayList<>();
        if (state == State.REJECTED) {
            causes.add(new ProjectedTest.Cause(false, stopped ? "endurance" : random.nextInt(3) == 0 ? "power_up / start" : "power_up / lamps"));
            causes.add(new ProjectedTest.Cause(true, stopped && random.nextBoolean() ? "W01" : "B07"));
        }
        double volts = 24.02 - 4e-5 * number % 0.3 + 0.03 * random.nextGaussian();
        return new ProjectedTest("t" + number, opened, "tarn_c16", "c16_acceptance", String.format("C16-%06d", number), PEOPLE[number % 3],
                "station " + (1 + random.nextInt(4)), state, !again, soak(stop, supplyBad),
                List.of(new ProjectedTest.Reading("supply_volts", "V", volts, "M-" + (number / 50 % 3))), causes,
                again ? Optional.of("t" + (number - 1)) : Optional.empty(), state == State.ACCEPTED ? Optional.of(field(opened)) : Optional.empty());
    }

    /** Some come back, most of them early; in a third of those nothing is found. */
    private ProjectedTest.Field field(Instant opened) {
        long since = LocalDate.ofInstant(opened, ZoneOffset.UTC).toEpochDay() + 4;
        boolean back = random.nextInt(30) == 0;
        long days = (long) (150 * -Math.log(1 - random.nextDouble()));
        return back ? new ProjectedTest.Field(since, Optional.of(since + days), random.nextInt(3)) : new ProjectedTest.Field(since, Optional.empty(), -1);
    }

    /** A month after the last of so many tests was opened. */
    static LocalDate day(int tests) {
        return LocalDate.ofInstant(BEGIN.plus(Duration.ofHours(5L * tests)), ZoneOffset.UTC).plusDays(30);
    }

    /** Looked at every 24 h, give or take half an hour. */
    private Optional<ProjectedTest.Soak> soak(double stop, boolean never) {
        if (never) {
            return Optional.empty();
        }
        long after = 0;
        for (int look = 1; look <= 3; look++) {
            long now = 86_400L * look + random.nextInt(3600) - (look == 3 ? 0 : 1800);
            if (stop * 3600 < now) {
                return Optional.of(new ProjectedTest.Soak(after, Optional.of(now)));
            }
            after = now;
        }
        return Optional.of(new ProjectedTest.Soak(after, Optional.empty()));
    }
}
