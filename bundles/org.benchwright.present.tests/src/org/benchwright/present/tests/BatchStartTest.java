package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.SerialMask;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.present.BatchStart;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.UnitRow;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which units a batch is of, and when each is begun. */
class BatchStartTest {

    private static final Instant NOW = Instant.parse("2026-03-02T14:30:00Z");
    private static final Plan C16 = SamplePlan.acceptance();

    private static Plan family(String name, String mask) {
        UnitFamily one = C16.family();
        UnitFamily other = new UnitFamily(name, "Family " + name, one.supply(), Optional.of(new SerialMask(mask)), one.lamps(), one.modes(), one.faults(),
                one.stopStays());
        return ChangedPlan.of(C16).family(other).plan();
    }

    private static String refused(Executable deed) {
        return assertThrows(EntryRefusedException.class, deed).getMessage();
    }

    @ParameterizedTest
    @ValueSource(strings = {"C16-000001 C16-000002 C16-000003", "C16-000001,C16-000002;C16-000003", "  C16-000001\r\nC16-000002\n\nC16-000003\n",
            "C16-000001,\u00a0C16-000002\tC16-000003 ,", "\u0002C16-000001\u0003 C16-000002 C16-000003"})
    void serialNumbersAreTakenAsTheyAreListed(String typed) throws Exception {
        assertEquals(List.of("C16-000001", "C16-000002", "C16-000003"), BatchStart.serials(typed, C16));
        assertTrue(BatchStart.several(typed));
    }

    @Test
    void aSerialNumberMayHaveABlankWhereTheFamilySaysSo() throws Exception {
        Plan blank = family("k", "K ##");
        assertEquals(List.of("K 17"), BatchStart.serials("K 17", blank));
        assertEquals(List.of("K 17", "K 18"), BatchStart.serials("K 17, K 18", blank));
        assertFalse(BatchStart.several("C16-000001 "));
        assertEquals(List.of("C16-000001"), BatchStart.serials("C16-000001", C16));
    }

    @Test
    void noneOrTheSameTwiceIsRefused() {
        assertEquals("Enter the serial numbers of the units.", refused(() -> BatchStart.serials(" , ", C16)));
        assertEquals("C16-000001 is there twice. Take one out.", refused(() -> BatchStart.serials("C16-000001 C16-000002, C16-000001", C16)));
    }

    @Test
    void aUnitThatDoesNotFitIsRefused() throws Exception {
        BatchStart.requireFits("C16-000001", C16, C16);
        assertEquals("C16-1 does not look like a serial number of " + C16.family().title() + " (C16-######). Mend it, or test that unit alone.",
                refused(() -> BatchStart.requireFits("C16-1", C16, C16)));
        assertEquals("K 17 is of another family: Family k, the first unit is of " + C16.family().title() + ". A batch is of one family.",
                refused(() -> BatchStart.requireFits("K 17", family("k", "K ##"), C16)));
    }

    @Test
    void aUnitThatIsOpenIsRefusedUnlessOnlyTheOtherIsARehearsal() throws Exception {
        UnitRow open = new UnitRow("T-1", "C16-000001", "f", "p", "s", Optional.empty(), Optional.empty(), false, "x", false, "", false, Optional.empty(), "QN",
                Optional.empty(), Optional.empty(), "");
        BatchStart.requireNotOpen("C16-000001", true, List.of(open));
        BatchStart.requireNotOpen("C16-000002", false, List.of(open));
        assertEquals("C16-000001 is open already in test T-1. Take it out of the batch, or go on with that test.",
                refused(() -> BatchStart.requireNotOpen("C16-000001", false, List.of(open))));
    }

    @Test
    void theDistanceIsALengthOfTime() throws Exception {
        assertEquals(Duration.ofMinutes(5), BatchStart.apart(" 5 min "));
        assertEquals("0 s can't be the time between two starts: it takes more than nothing, and 24 h at most.", refused(() -> BatchStart.apart("0 s")));
        assertTrue(refused(() -> BatchStart.apart("-5 min")).startsWith("-5 min can't"));
        assertTrue(refused(() -> BatchStart.apart("25 h")).startsWith("25 h can't"));
        assertTrue(refused(() -> BatchStart.apart("soon")).startsWith("How far apart do they begin? "));
        assertTrue(refused(() -> BatchStart.apart("")).startsWith("How far apart do they begin? "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"2026-03-02T14:35:00Z | begins 14:35, in 5 min", "2026-03-02T14:34:00.001Z | begins 14:34, in 5 min",
            "2026-03-02T14:31:00Z | begins 14:31, in 1 min", "2026-03-02T14:30:00.001Z | begins 14:30, in 1 s", "2026-03-02T14:30:00Z | begins now",
            "2026-03-02T14:29:00Z | begins now", "2026-03-03T02:30:00Z | begins 3 Mar 02:30, in 12 h"})
    void itIsToldWhenEachBegins(Instant due, String words) {
        assertEquals(words, new BatchStart.Start("C16-000001", due).words(NOW, ZoneOffset.UTC));
    }

    @Test
    void whatIsLateAfterAPauseIsNotBegunAllAtOnce() {
        BatchStart batch = BatchStart.of(List.of("A", "B", "C"), Duration.ofMinutes(5), NOW);
        Instant woken = NOW.plus(Duration.ofHours(2));
        assertEquals("A", batch.due(woken).orElseThrow().serial());
        BatchStart left = batch.begun("A", woken);
        assertEquals(Optional.empty(), left.due(woken.plusSeconds(299)));
        assertEquals("B", left.due(woken.plusSeconds(300)).orElseThrow().serial());
        assertEquals(woken.plusSeconds(600), left.starts().get(1).due());
    }

    @Test
    void oneBegunByHandKeepsTheOthersAway() {
        BatchStart left = BatchStart.of(List.of("A", "B", "C"), Duration.ofMinutes(5), NOW).begun("A", NOW).begun("C", NOW.plusSeconds(240));
        assertEquals(List.of(new BatchStart.Start("B", NOW.plusSeconds(540))), left.starts());
        assertEquals(List.of(new BatchStart.Start("B", NOW.plusSeconds(300))), BatchStart.of(List.of("B", "C"), Duration.ofMinutes(5), NOW.plusSeconds(300))
                .without("C").starts());
    }
}
