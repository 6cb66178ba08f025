package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.present.BatchStart;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** Whatever the clock and the technician do, no unit of a batch begins too near behind another, too early, or not at all. */
class BatchStartLawsTest implements PropertyTest {

    private static final Instant FIRST = Instant.parse("2026-03-02T14:30:00Z");

    private static List<String> units(int count) {
        return IntStream.range(0, count).mapToObj(i -> "C16-" + i).toList();
    }

    @Property
    void eachIsPlannedOneDistanceBehindTheOneBefore(@ForAll @IntRange(min = 1, max = 60) int count, @ForAll @IntRange(min = 1, max = 86_400) int apart) {
        BatchStart batch = BatchStart.of(units(count), Duration.ofSeconds(apart), FIRST);
        assertEquals(units(count), batch.starts().stream().map(BatchStart.Start::serial).toList());
        assertEquals(FIRST, batch.starts().get(0).due());
        for (int i = 1; i < count; i++) {
            assertEquals(Duration.ofSeconds(apart), Duration.between(batch.starts().get(i - 1).due(), batch.starts().get(i).due()));
        }
    }

    /** Steps are seconds that the clock goes on; a step that ends with 7 begins the last unit by hand, one that ends with 9 takes it off. */
    @Property
    void whatIsBegunByItselfKeepsItsDistanceAndNoneIsLost(@ForAll @IntRange(min = 1, max = 12) int count, @ForAll @IntRange(min = 1, max = 900) int apart,
            @ForAll @Size(max = 40) List<@IntRange(min = 0, max = 3000) Integer> steps) {
        BatchStart planned = BatchStart.of(units(count), Duration.ofSeconds(apart), FIRST);
        BatchStart left = planned;
        List<String> gone = new ArrayList<>();
        List<String> byThemselves = new ArrayList<>();
        Optional<Instant> before = Optional.empty();
        Instant now = FIRST;
        for (int i = 0; i < steps.size() || !left.starts().isEmpty(); i++) {
            int step = i < steps.size() ? steps.get(i) : apart;
            now = now.plusSeconds(step);
            Optional<BatchStart.Start> due = left.due(now);
            if (due.isPresent()) {
                Instant at = now;
                String serial = due.get().serial();
                before.ifPresent(last -> assertFalse(at.isBefore(last.plus(left(apart))), "too near behind another"));
                assertFalse(now.isBefore(planned.starts().get(units(count).indexOf(serial)).due()), "too early");
                left = left.begun(serial, now);
                byThemselves.add(serial);
                gone.add(serial);
                before = Optional.of(now);
            } else if (!left.starts().isEmpty() && i < steps.size() && step % 10 == 7) {
                String last = left.starts().get(left.starts().size() - 1).serial();
                left = left.begun(last, now);
                gone.add(last);
                before = Optional.of(now);
            } else if (!left.starts().isEmpty() && i < steps.size() && step % 10 == 9) {
                String last = left.starts().get(left.starts().size() - 1).serial();
                left = left.without(last);
                gone.add(last);
            }
        }
        assertEquals(units(count), gone.stream().sorted((a, b) -> units(count).indexOf(a) - units(count).indexOf(b)).toList());
        assertTrue(byThemselves.equals(byThemselves.stream().sorted((a, b) -> units(count).indexOf(a) - units(count).indexOf(b)).toList()), "in order");
    }

    private static Duration left(int apart) {
        return Duration.ofSeconds(apart);
    }
}
