package org.benchwright.present;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;

import org.benchwright.core.SheetTable;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.HouseWords;
import org.benchwright.workshop.FaultCode;

/**
 * The codes of fault logs as the engineer of a family wants them: which are met, how often, and which the family's notes don't tell.
 *
 * @param sentence what there is, in a sentence
 * @param rows     the codes
 */
public record FaultPage(String sentence, List<Row> rows) {

    private static final int MOST_TESTS = 3;
    private static final int MOST_BESIDE = 3;

    public FaultPage {
        rows = List.copyOf(rows);
    }

    /**
     * A code.
     *
     * @param code   as the units wrote it
     * @param name   its family's name, as procedures refer to it
     * @param family its family's title
     * @param known  whether the family's notes told it when it was last seen
     * @param tests  in how many tests it was met, as a number in digits
     * @param first  the day on which it was first met, such as 2026-03-02
     * @param last   the day on which it was last met
     * @param where  ids of the latest tests, three at most, with blanks between them
     * @param beside what stood beside it lately, three texts at most; may be empty
     */
    public record Row(String code, String name, String family, boolean known, String tests, String first, String last, String where, String beside) {

        /** Whether the notes told it, in words. */
        public String told() {
            return (known ? HouseWords.FAULT_TOLD : HouseWords.FAULT_NOT_TOLD).text();
        }

        /** A note for the family's file, to be filled in: what stood beside the code goes before it as a comment. */
        public String note() {
            String comment = beside.isEmpty() ? "" : HouseWords.FAULT_DRAFT_BESIDE.text(beside) + "\n";
            String unnameable = code.matches("[\\p{L}_\u00b0][\\p{L}_\u00b00-9]*") ? "" : HouseWords.FAULT_DRAFT_NO_NAME.text(code) + "\n";
            return unnameable + comment + HouseWords.FAULT_DRAFT.text(code);
        }
    }

    /**
     * The codes of a ledger, those that were met most often first.
     *
     * @param ledger its file; where there is none, there are no codes
     * @param all    also those that the family's notes tell
     * @param zone   in which a day is a day
     * @throws CannotStoreException if the ledger can't be read
     */
    public static FaultPage of(Path ledger, boolean all, ZoneId zone) throws CannotStoreException {
        List<FaultCode> codes = !Files.exists(ledger) ? List.of() : Asked.read(ledger, open -> open.faultCodes());
        List<FaultCode> shown = codes.stream().filter(code -> all || !code.known()).toList();
        long unknown = codes.stream().filter(code -> !code.known()).count();
        return new FaultPage(codes.isEmpty() ? HouseWords.FAULTS_NONE.text() : HouseWords.FAULTS_SAY.text(codes.size(), unknown),
                shown.stream().map(code -> row(code, zone)).toList());
    }

    private static Row row(FaultCode code, ZoneId zone) {
        return new Row(code.code(), code.name(), code.family(), code.known(),
                String.valueOf(code.tests().size()), code.first().atZone(zone).toLocalDate().toString(), code.last().atZone(zone).toLocalDate().toString(),
                String.join(" ", latest(code.tests(), MOST_TESTS)), String.join("; ", latest(code.beside(), MOST_BESIDE)));
    }

    private static List<String> latest(List<String> all, int most) {
        return all.subList(Math.max(0, all.size() - most), all.size());
    }

    /** Code, family, whether its notes tell it, tests, first, last, and where to look. */
    public SheetTable table() {
        return new SheetTable("fault-codes", headings(), rows.stream().map(row -> List.of(row.code(), row.family(), row.told(), row.tests(), row.first(), row.last(),
                row.where())).toList());
    }

    /** What the columns of the table are called. */
    public static List<String> headings() {
        return List.of(HouseWords.FAULT_CODE.text(), HouseWords.FAULT_FAMILY.text(), HouseWords.FAULT_NOTES.text(), HouseWords.FAULT_TESTS.text(),
                HouseWords.FAULT_FIRST.text(), HouseWords.FAULT_LAST.text(), HouseWords.FAULT_WHERE.text());
    }
}
