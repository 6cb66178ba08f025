package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.present.FaultExplanation;
import org.benchwright.present.FaultNotes;
import org.benchwright.present.FaultPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A fault log as a table: what is typed or pasted becomes rows, each explained, and rows become the answer. */
class FaultNotesTest {

    private static final FaultNotes NOTES = new FaultNotes(List.of(new FaultExplanation("W01", true, "Watchdog expired", "A scan took too long.", "", "Soak again warm."),
            new FaultExplanation("M02", true, "Memory differs", "", "", "")));

    private static String shown(FaultNotes.Row row) {
        return row.code() + "|" + row.text() + "|" + row.words();
    }

    @Test
    void eachLineIsARowThatIsExplained() {
        List<FaultNotes.Row> rows = NOTES.rows("W01  02:14, second night\n\nZ99\todd; M02");
        assertEquals(List.of("W01|02:14, second night|Watchdog expired. Soak again warm.",
                "Z99|odd|Not in the family's notes. It is kept, and collected for the engineer.", "M02||Memory differs"), rows.stream().map(FaultNotesTest::shown).toList());
        assertEquals(List.of(true, false, true), rows.stream().map(FaultNotes.Row::known).toList());
        assertEquals("W01 02:14, second night\nZ99 odd\nM02", FaultNotes.answer(rows));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "02:14>W01>stopped | W01 02:14 stopped", "W01>02:14>stopped | W01 02:14 stopped", "17>Z99>odd | 17 Z99 odd",
        "W01>after M02 | W01 after M02", "02:14>W01>M02 | 02:14 W01 M02", "02:14 W01 | 02:14 W01"})
    void aPastedTableHasItsCodeWhereTheFamilysNotesKnowOne(String pasted, String answer) {
        assertEquals(answer, FaultNotes.answer(NOTES.rows(pasted.replace('>', '\t'))));
    }

    @Test
    void anEmptyLogIsSaidToBeEmpty() {
        assertEquals(List.of("none||The log is empty."), NOTES.rows(" none ").stream().map(FaultNotesTest::shown).toList());
        assertEquals("", NOTES.explain("", "").words());
        assertEquals("none", FaultNotes.answer(NOTES.rows("none")));
        assertFalse(NOTES.explain("none", "of these").known(), "a code that reads so is one");
    }

    @Test
    void aDraftOfANoteTellsWhatStoodBesideTheCode() {
        FaultPage.Row row = new FaultPage.Row("Z99", "tarn_c16", "Tarn C16", false, "2", "2026-03-02", "2026-03-05", "T-1", "odd; 02:14");
        assertEquals("// stood beside it: odd; 02:14\nfault Z99 \"\" {\n    means \"\"\n    often \"\"\n    next \"\"\n}", row.note());
        FaultPage.Row number = new FaultPage.Row("17", "tarn_c16", "Tarn C16", false, "1", "2026-03-02", "2026-03-02", "T-1", "");
        assertTrue(number.note().startsWith("// A note's code has letters"), number.note());
    }
}
