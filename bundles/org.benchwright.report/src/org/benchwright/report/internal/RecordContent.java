package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.benchwright.core.SheetTable;
import org.benchwright.report.Page;
import org.benchwright.report.TestReport;

/**
 * What a full record says: every event, struck entries too.
 *
 * @param report the test
 */
public record RecordContent(TestReport report) {

    /** The last column of a course tells in words; the others hold a number or a word. */
    private static final int LAST_COLUMN = 12;

    /** The document. */
    public Document document() {
        String test = report.heading().test();
        TestBlocks about = new TestBlocks(report);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Title(Message.RECORD.text(), Message.RECORD_BELOW.text(test)));
        blocks.add(about.banner());
        blocks.addAll(about.particulars());
        blocks.addAll(new ProofBlocks(report).all());
        report.shown().courses().forEach(course -> course(course, blocks));
        blocks.addAll(about.deviations());
        blocks.addAll(about.standing());
        blocks.add(new Block.Heading(Message.STORY.text()));
        blocks.add(new Block.Table(ReportWords.texts(Message.NUMBER_SHORT, Message.TIME, Message.WHO, Message.WORDS),
                List.of(2, 6, 3, 19), report.shown().story().stream().map(RecordContent::row).toList()));
        blocks.addAll(about.attachments());
        blocks.addAll(about.amendments());
        blocks.addAll(about.evidence());
        blocks.add(new Block.Small(Message.NO_SAFETY.text()));
        blocks.add(new Block.Small(Message.END.text()));
        return new Document(Message.RECORD.text() + " " + test, Message.RECORD.text() + " " + test + "   " + report.heading().serial(), blocks);
    }

    /** The words stand beside the plot: they say what may be read off it. */
    private static void course(Page.Section course, List<Block> blocks) {
        blocks.add(new Block.Heading(course.title()));
        course.sentences().forEach(sentence -> blocks.add(new Block.Text(sentence)));
        course.plot().ifPresent(plot -> blocks.add(new Block.Picture(plot)));
        for (SheetTable table : course.tables()) {
            List<Integer> weights = new ArrayList<>(Collections.nCopies(table.headings().size() - 1, 2));
            weights.add(LAST_COLUMN);
            blocks.add(new Block.Table(table.headings(), weights, table.rows()));
        }
    }

    private static List<String> row(TestReport.StoryLine line) {
        return List.of(String.valueOf(line.sequence()), ReportWords.inTable(line.instant()), line.who(),
                line.struck() ? Message.STRUCK.text(line.words()) : line.words());
    }
}
