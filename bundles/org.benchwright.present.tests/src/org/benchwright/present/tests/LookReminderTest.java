package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.LookReminder;
import org.benchwright.present.LookReminder.Kind;
import org.benchwright.present.UnitRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who has to look at what, and how soon. */
class LookReminderTest {

    private static final Instant DUE = Instant.parse("2026-03-02T08:00:00Z");

    private static UnitRow row(String serial, Instant due, boolean rehearsal) {
        return new UnitRow("T-" + serial, serial, "f", "p", "s", Optional.of(Duration.ofHours(3)), Optional.of(due), false, "x", rehearsal, "", false,
                Optional.of("A 3"), "QN", Optional.empty(), Optional.of(due.plus(Duration.ofHours(2))), "mode run");
    }

    @ParameterizedTest
    @CsvSource({"07:44:59,", "07:45:00,COMING", "07:59:59,COMING", "08:00:00,DUE", "10:00:00,DUE", "10:00:01,MISSED"})
    void aLookIsComingThenDueThenMissed(String time, Kind kind) {
        Instant now = Instant.parse("2026-03-02T" + time + "Z");
        assertEquals(Optional.ofNullable(kind), LookReminder.of(List.of(row("C16-1", DUE, false)), now).stream().map(LookReminder::kind).findFirst());
    }

    @Test
    void theMostUrgentComesFirstAndIsToldInWords() {
        Instant now = DUE.plus(Duration.ofMinutes(5));
        List<LookReminder> looks = LookReminder.of(List.of(row("C16-1", now.plus(Duration.ofMinutes(10)), false), row("C16-2", DUE, false),
                row("C16-3", DUE.minus(Duration.ofDays(1)), false)), now);
        assertEquals(List.of("A 3  C16-3: LOOK MISSED, was due at 1 Mar 08:00, in time until 1 Mar 10:00. Look now all the same.",
                "A 3  C16-2: LOOK NOW, due since 08:00, in time until 10:00", "A 3  C16-1: look at it at 08:15"),
                looks.stream().map(look -> look.words(now, ZoneOffset.UTC)).toList());
        assertEquals(Optional.of("1 LOOK MISSED   1 LOOK DUE   1 look soon"), LookReminder.summary(looks));
    }

    @Test
    void nobodyIsRemindedOfARehearsalOrOfAUnitThatIsNotOnSoak() {
        UnitRow notOnSoak = new UnitRow("T-1", "C16-1", "f", "p", "s", Optional.empty(), Optional.empty(), false, "x", false, "", false, Optional.empty(), "QN",
                Optional.empty(), Optional.empty(), "");
        assertEquals(List.of(), LookReminder.of(List.of(row("C16-2", DUE, true), notOnSoak), DUE));
        assertEquals(Optional.empty(), LookReminder.summary(List.of()));
    }
}
