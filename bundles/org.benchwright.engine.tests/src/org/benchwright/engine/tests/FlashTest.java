package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Quantity;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A flash rate by tapping along: what is decided follows from the taps, and taps that decide nothing are refused. */
class FlashTest {

    private static Walk atTheLamp(FlashRate rate) {
        Signal lamp = new Signal.LampShows("flt", "FLT", Optional.of(LampColour.RED), new LampPattern.Flashing(rate));
        Action expected = new Action.Expect("flt", List.of(new Action.AnyOf(List.of(lamp))), within("5 s", "on"), rejected("wrong rate"));
        return Walk.open(PlanDraft.plan().stage("a", step("a1", energise("supply"), mark("on"), expected)).build()).until("a1.flt");
    }

    /** Taps at these times in milliseconds. */
    private static Fact taps(long... millis) {
        List<Duration> taps = new ArrayList<>();
        for (long each : millis) {
            taps.add(Duration.ofMillis(each));
        }
        return new Observation.Tapped("flt", taps);
    }

    private static Fact even(int count, long interval) {
        long[] millis = new long[count];
        for (int i = 0; i < count; i++) {
            millis[i] = i * interval;
        }
        return taps(millis);
    }

    private static String decided(Walk walk) {
        return walk.run().events().stream().filter(event -> event.body() instanceof Derived.CheckDecided d && d.check().equals("flt"))
                .map(event -> ((Derived.CheckDecided) event.body()).outcome().name()).findFirst().orElse("nothing");
    }

    /** The bands of IEC 60073: slow 0.4 to 0.8 Hz, normal 1.4 to 2.8 Hz. */
    @ParameterizedTest
    @CsvSource({"2600, DOES_NOT_CONFORM, DOES_NOT_CONFORM", "2000, CONFORMS, DOES_NOT_CONFORM", "1300, CONFORMS, DOES_NOT_CONFORM",
            "1000, DOES_NOT_CONFORM, DOES_NOT_CONFORM", "700, DOES_NOT_CONFORM, CONFORMS", "400, DOES_NOT_CONFORM, CONFORMS",
            "300, DOES_NOT_CONFORM, DOES_NOT_CONFORM"})
    void theRateDecidesByTheBand(long interval, String slow, String normal) {
        assertEquals(slow, decided(atTheLamp(new FlashRate.Slow()).tell(even(4, interval))));
        assertEquals(normal, decided(atTheLamp(new FlashRate.Normal()).tell(even(4, interval))));
    }

    @Test
    void aStatedRateAndAnyRate() {
        FlashRate around = new FlashRate.Around(Quantity.of("1", "Hz"), BigDecimal.valueOf(20));
        assertEquals("CONFORMS", decided(atTheLamp(around).tell(even(5, 1000))));
        assertEquals("DOES_NOT_CONFORM", decided(atTheLamp(around).tell(even(5, 600))));
        assertEquals("CONFORMS", decided(atTheLamp(new FlashRate.Any()).tell(even(5, 3000))));
    }

    /** Every tap 200 ms after the lamp lit up is the same rate as every tap at once. */
    @Test
    void whatCountsIsTheTimeFromTheFirstTapToTheLast() {
        Walk walk = atTheLamp(new FlashRate.Normal()).tell(taps(0, 520, 980, 1500, 2000));
        assertEquals("CONFORMS", decided(walk));
        String words = walk.run().events().stream().filter(event -> event.body() instanceof Observation.Tapped).map(event -> event.body().toString())
                .findFirst()
                .orElse("");
        assertTrue(words.contains("PT0.52S"), "the taps themselves are on record");
    }

    @Test
    void aTapThatWasMissedDecidesNothing() {
        Walk walk = atTheLamp(new FlashRate.Normal());
        assertEquals("The taps are uneven by 50 %; at most 30 % decide. Tap once more, each time the lamp lights up.",
                walk.refusal(taps(0, 500, 1500, 2000)));
        walk.asks("a1.flt");
    }

    @Test
    void tooFewTapsDecideNothing() {
        assertEquals("Tap 4 times or more.", atTheLamp(new FlashRate.Normal()).refusal(taps(0, 500, 1000)));
        assertEquals("Taps come one after the other, the first one at zero.", atTheLamp(new FlashRate.Normal()).refusal(taps(0, 500, 500, 900)));
        assertEquals("Taps come one after the other, the first one at zero.", atTheLamp(new FlashRate.Normal()).refusal(taps(10, 500, 900, 1300)));
    }

    /** Scatter of 60 ms in 1.26 Hz .. 1.56 Hz: the limit of 1.4 Hz is nearer than that. */
    @Test
    void aRateThatIsTooCloseToALimitDecidesNothing() {
        String words = atTheLamp(new FlashRate.Normal()).refusal(taps(0, 640, 1420, 2130));
        assertTrue(words.endsWith("Tap for longer."), words);
        assertEquals("CONFORMS", decided(atTheLamp(new FlashRate.Normal()).tell(taps(0, 640, 1340, 2030, 2720, 3380, 4060, 4740, 5400))));
    }

    @Test
    void aLampThatIsExpectedSteadyIsNotTapped() {
        Action steady = expect("flt", within("5 s", "on"), rejected("x"));
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", energise("supply"), mark("on"), steady)).build()).until("a1.flt");
        assertEquals("This cannot be answered by tapping: no single lamp is expected to flash there.", walk.refusal(even(5, 500)));
    }

    @Test
    void aTappingCanBeStruckLikeAnyEntry() {
        Walk walk = atTheLamp(new FlashRate.Slow()).tell(even(4, 500));
        assertEquals("wrong rate", walk.run().reason());
        walk.strike().asks("a1.flt");
    }
}
