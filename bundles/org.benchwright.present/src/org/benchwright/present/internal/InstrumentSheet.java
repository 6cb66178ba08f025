package org.benchwright.present.internal;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.CommaSeparated;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.present.EntryRefusedException;

/** A list of instruments as a spreadsheet writes it. Nothing of it is ever carried out: a cell that is a formula is refused. */
public final class InstrumentSheet {

    /** The headings, in any order; the first two are needed. */
    private static final List<String> HEADINGS = List.of("asset", "title", "serial", "ranges", "custody", "certificate", "calibrated", "due");

    private InstrumentSheet() {
    }

    /**
     * What the list tells: each instrument is added, and calibrated where a certificate is named.
     *
     * @throws EntryRefusedException if a line can't be read, and which
     */
    public static List<InstrumentFact> facts(String csv) throws EntryRefusedException {
        List<List<String>> lines = CommaSeparated.read(csv);
        List<String> headings = lines.isEmpty() ? List.of() : lines.get(0).stream().map(cell -> cell.strip().toLowerCase(Locale.ROOT)).toList();
        if (!headings.contains("asset") || !headings.contains("title") || !HEADINGS.containsAll(headings)) {
            throw new EntryRefusedException(HouseWords.IMPORT_HEADINGS.text(String.join(",", HEADINGS)));
        }
        List<InstrumentFact> facts = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            line(headings, lines.get(i), i + 1, facts);
        }
        return facts;
    }

    private static void line(List<String> headings, List<String> cells, int number, List<InstrumentFact> facts) throws EntryRefusedException {
        try {
            if (cells.size() != headings.size()) {
                throw new EntryRefusedException(HouseWords.IMPORT_CELLS.text(cells.size(), headings.size()));
            }
            Cells line = new Cells(headings, cells);
            String asset = line.of("asset");
            facts.add(new InstrumentFact.Added(asset, line.of("title"), line.of("serial"), RangeText.all(List.of(line.of("ranges").split(";"))), line.of("custody")));
            if (!line.of("certificate").isEmpty()) {
                facts.add(new InstrumentFact.Calibrated(asset, line.of("certificate"),
                        line.day("calibrated").orElseThrow(() -> new EntryRefusedException(HouseWords.IMPORT_NOT_CALIBRATED.text())), line.day("due"), List.of()));
            }
        } catch (EntryRefusedException refused) {
            throw new EntryRefusedException(HouseWords.IMPORT_LINE.text(number, refused.getMessage()), refused);
        }
    }

    private record Cells(List<String> headings, List<String> cells) {
        String of(String heading) throws EntryRefusedException {
            int at = headings.indexOf(heading);
            String cell = at < 0 ? "" : cells.get(at).strip();
            if (!cell.isEmpty() && "=+-@".indexOf(cell.charAt(0)) >= 0) {
                throw new EntryRefusedException(HouseWords.IMPORT_FORMULA.text(cell));
            }
            // A list that was written safely has this mark before what might have been taken for a formula.
            return cell.startsWith("'") ? cell.substring(1) : cell;
        }

        Optional<LocalDate> day(String heading) throws EntryRefusedException {
            String text = of(heading);
            try {
                return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
            } catch (DateTimeException e) {
                throw new EntryRefusedException(HouseWords.IMPORT_NO_DAY.text(text), e);
            }
        }
    }
}
