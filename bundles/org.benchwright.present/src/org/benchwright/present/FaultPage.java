package org.benchwright.present;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;

import org.benchwright.core.SheetTable;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.HouseWords;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultCode;

/**
 * The codes of fault logs as the engineer of a family wants them: which are met, how often, and which the family's notes don't tell.
 *
 * @param sentence what there is, in a sentence
 * @param table    code, family, whether its notes tell it, tests, first, last, and where to look
 */
public record FaultPage(String sentence, SheetTable table) {

    private static final int MOST_TESTS = 3;

    /**
     * The codes of a ledger, those that were met most often first.
     *
     * @param all also those that the family's notes tell
     * @param zone in which a day is a day
     * @throws CannotStoreException if the ledger can't be read
     */
    public static FaultPage of(Path ledger, boolean all, ZoneId zone) throws CannotStoreException {
        List<FaultCode> codes = Asked.read(() -> {
            try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
                return open.faultCodes();
            }
        });
        List<FaultCode> shown = codes.stream().filter(code -> all || !code.known()).toList();
        long unknown = codes.stream().filter(code -> !code.known()).count();
        return new FaultPage(codes.isEmpty() ? HouseWords.FAULTS_NONE.text() : HouseWords.FAULTS_SAY.text(codes.size(), unknown), new SheetTable("fault-codes", List.of(HouseWords.FAULT_CODE.text(),
                HouseWords.FAULT_FAMILY.text(), HouseWords.FAULT_NOTES.text(), HouseWords.FAULT_TESTS.text(), HouseWords.FAULT_FIRST.text(),
                HouseWords.FAULT_LAST.text(), HouseWords.FAULT_WHERE.text()), shown.stream().map(code -> row(code, zone)).toList()));
    }

    private static List<String> row(FaultCode code, ZoneId zone) {
        List<String> latest = code.tests().subList(Math.max(0, code.tests().size() - MOST_TESTS), code.tests().size());
        return List.of(code.code(), code.family(), (code.known() ? HouseWords.FAULT_TOLD : HouseWords.FAULT_NOT_TOLD).text(), String.valueOf(code.tests().size()),
                code.first().atZone(zone).toLocalDate().toString(), code.last().atZone(zone).toLocalDate().toString(), String.join(" ", latest));
    }
}
