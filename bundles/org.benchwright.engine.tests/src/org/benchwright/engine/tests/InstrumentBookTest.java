package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.InstrumentBook;
import org.benchwright.engine.instrument.InstrumentEvent;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.instrument.InstrumentUse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What can be said of instruments, and by whom. */
class InstrumentBookTest {

    private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
    private static final InstrumentFact ADDED = new InstrumentFact.Added("M-17", "Multimeter", "SN 4", List.of(Parts.reads("0", "60", "dc")), "bench 2");

    private static InstrumentEvent bench(long number, InstrumentFact fact) {
        return new InstrumentEvent(number, NOON, Optional.empty(), Set.of(), true, fact);
    }

    private static InstrumentEvent by(Role role, InstrumentFact fact) {
        return new InstrumentEvent(7, NOON, Optional.of("RB"), Set.of(role), false, fact);
    }

    private static InstrumentBook added() throws RefusedException {
        return InstrumentBook.empty().with(bench(1, ADDED));
    }

    private static String refusal(InstrumentBook book, InstrumentEvent event) {
        return assertThrows(RefusedException.class, () -> book.with(event)).getMessage();
    }

    private static String refusalOf(InstrumentRange range) {
        return refusal(InstrumentBook.empty(), bench(1, new InstrumentFact.Added("M-1", "Meter", "", List.of(range), "")));
    }

    private static InstrumentFact calibrated(String on, String due) {
        return new InstrumentFact.Calibrated("m-17", "C-9", LocalDate.parse(on), Optional.of(LocalDate.parse(due)), List.of());
    }

    @Test
    void anInstrumentIsAddedCalibratedMovedRetiredAndReinstated() throws RefusedException {
        InstrumentBook book = added().with(bench(2, calibrated("2026-03-01", "2027-03-01"))).with(bench(3, new InstrumentFact.Moved("M-17", "LW")))
                .with(bench(4, new InstrumentFact.Retired("M-17", "was dropped")));
        Instrument meter = book.find(" m-17 ").orElseThrow();
        assertEquals("C-9", meter.certificate());
        assertEquals(Optional.of(LocalDate.parse("2027-03-01")), meter.due());
        assertEquals("LW", meter.custody());
        assertEquals(Optional.of("was dropped"), meter.retired());
        assertEquals(1, meter.ranges().size());
        assertEquals(4, meter.statement());
        assertTrue(refusal(book, bench(5, new InstrumentFact.Retired("M-17", "again"))).contains("was dropped"));
        Instrument back = book.with(bench(5, new InstrumentFact.Reinstated("M-17", "calibrated"))).find("M-17").orElseThrow();
        assertEquals(Optional.empty(), back.retired());
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, names = {"ENGINEER", "SUPERVISOR"}, mode = EnumSource.Mode.EXCLUDE)
    void onlyEngineersAndSupervisorsMay(Role role) {
        assertTrue(refusal(InstrumentBook.empty(), by(role, ADDED)).contains("it takes an engineer or a supervisor"));
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, names = {"ENGINEER", "SUPERVISOR"})
    void thoseMay(Role role) throws RefusedException {
        assertEquals(1, InstrumentBook.empty().with(by(role, ADDED)).all().size());
    }

    @Test
    void theBenchMaySignNoMoreOnceSomebodyHasAKey() {
        InstrumentEvent byTheBench = new InstrumentEvent(1, NOON, Optional.empty(), Set.of(), false, ADDED);
        assertTrue(refusal(InstrumentBook.empty(), byTheBench).contains("People have keys"));
    }

    @Test
    void whatCannotBeIsRefused() throws RefusedException {
        assertEquals("There is an instrument m-17 already.", refusal(added(), bench(2, new InstrumentFact.Added("m-17", "Other", "", List.of(), ""))));
        assertTrue(refusal(added(), bench(2, new InstrumentFact.Moved("M-18", "LW"))).contains("no instrument M-18"));
        assertTrue(refusal(added(), bench(2, calibrated("2026-03-04", "2027-03-04"))).contains("yet to come"));
        assertTrue(refusal(added(), bench(2, calibrated("2026-03-01", "2026-03-01"))).contains("not before"));
        assertTrue(refusal(added(), bench(2, new InstrumentFact.Reinstated("M-17", "x"))).contains("in service"));
        assertTrue(refusalOf(Parts.reads("60", "0", "dc")).contains("wrong way round"));
        assertTrue(refusal(InstrumentBook.empty(), bench(1, new InstrumentFact.Added("", "Meter", "", List.of(), ""))).contains("needed"));
        InstrumentRange mixed = new InstrumentRange(InstrumentUse.READS, "", Quantity.of("0", "V"), Quantity.of("1", "A"), BigDecimal.ONE, BigDecimal.ONE,
                Quantity.of("1", "V"), Optional.empty());
        assertTrue(refusalOf(mixed).contains("not of one kind"));
        InstrumentRange better = new InstrumentRange(InstrumentUse.READS, "", Quantity.of("0", "V"), Quantity.of("1", "V"), BigDecimal.ONE.negate(),
                BigDecimal.ONE, Quantity.of("1", "mV"), Optional.empty());
        assertTrue(refusalOf(better).contains("0 or more"));
    }
}
