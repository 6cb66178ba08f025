package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.report.TestReport;

/**
 * What a full record says: every event, struck entries too.
 *
 * @param report the test
 */
public record RecordContent(TestReport report) {

    /** The document. */
    public Document document() {
        String test = report.heading().test();
        TestBlocks about = new TestBlocks(report);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Title(Message.RECORD.text(), Message.RECORD_BELOW.text(test)));
        blocks.add(about.banner());
        blocks.addAll(about.particulars());
        blocks.addAll(new ProofBlocks(report).all());
        report.shown().courses().forEach(course -> blocks.addAll(SectionBlocks.of(course)));
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

    private static List<String> row(TestReport.StoryLine line) {
        return List.of(String.valueOf(line.sequence()), ReportWords.inTable(line.instant()), line.who(),
                line.struck() ? Message.STRUCK.text(line.words()) : line.words());
    }
}
