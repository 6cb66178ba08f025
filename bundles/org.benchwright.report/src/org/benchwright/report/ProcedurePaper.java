package org.benchwright.report;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.List;
import java.util.Objects;

import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.SheetTable;
import org.benchwright.report.internal.Archive;
import org.benchwright.report.internal.Block;
import org.benchwright.report.internal.Document;
import org.benchwright.report.internal.Html;
import org.benchwright.report.internal.Message;

/**
 * A procedure on paper. It is no record: nothing that is ticked on it is known to the ledger.
 *
 * @param text what is printed
 * @param now  when it is printed
 */
public record ProcedurePaper(PrintedText text, Instant now) {

    public ProcedurePaper {
        Objects.requireNonNull(text);
        Objects.requireNonNull(now);
    }

    /** The paper as PDF/A-3u. */
    public byte[] pdf() {
        return Archive.pages(document(), Message.ISSUED.text(now.truncatedTo(ChronoUnit.SECONDS).toString()), now, List.of());
    }

    /** The paper as one HTML file. */
    public String html() {
        return new Html(document()).text();
    }

    private Document document() {
        return new Document(text.title(), text.header(), text.parts().stream().map(ProcedurePaper::block).toList());
    }

    private static Block block(Part part) {
        if (part instanceof PrintedText.Title title) {
            return new Block.Title(title.words(), title.below());
        } else if (part instanceof PrintedText.Heading heading) {
            return heading.level() == 1 ? new Block.Heading(heading.words()) : new Block.Subheading(heading.words());
        } else if (part instanceof PrintedText.Sentence sentence) {
            return new Block.Text(sentence.words());
        } else if (part instanceof PrintedText.Instruction instruction) {
            return new Block.Strong(instruction.words());
        } else if (part instanceof PrintedText.Hazard hazard) {
            return new Block.Panel(hazard.signal(), hazard.word(), hazard.sentences());
        } else if (part instanceof PrintedText.Asked asked) {
            return new Block.Task(asked.words(), asked.notes());
        } else if (part instanceof PrintedText.Told told) {
            return new Block.Told(told.words(), told.notes());
        } else if (part instanceof PrintedText.Rows rows) {
            return table(rows.table());
        }
        throw new IllegalArgumentException("no paper for " + part);
    }

    private static Block table(SheetTable table) {
        return new Block.Table(table.headings(), Collections.nCopies(table.headings().size(), 1), table.rows());
    }
}
