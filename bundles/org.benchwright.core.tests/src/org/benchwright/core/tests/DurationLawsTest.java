package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;

import org.benchwright.core.DurationFormatException;
import org.benchwright.core.Durations;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class DurationLawsTest implements PropertyTest {

    @Provide
    Arbitrary<String> scribble() {
        return Arbitraries.strings().withChars("0123456789.,- PTHMSDWhmins\u00a0\u0000\u00b5").ofMaxLength(44);
    }

    @Property
    void whatIsSpokenIsReadBack(@ForAll @LongRange(min = -10_000_000, max = 10_000_000) long seconds,
            @ForAll @IntRange(min = 0, max = 999_999_999) int nanos) {
        Duration duration = Duration.ofSeconds(seconds, nanos);
        assertEquals(duration, Durations.parse(Durations.words(duration)));
        assertEquals(duration, Durations.parse(duration.toString()));
    }

    @Property(tries = 5000)
    void everyTextIsALengthOfTimeOrRefusedWithWords(@ForAll("scribble") String text) {
        try {
            Duration read = Durations.parse(text);
            assertEquals(read, Durations.parse(Durations.words(read)));
        } catch (DurationFormatException refused) {
            assertEquals(Duration.ofMinutes(150), Durations.parse(refused.example()));
        }
    }
}
