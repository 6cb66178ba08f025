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
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Title(Message.RECORD.text(), Message.RECORD_BELOW.text(test)));
        blocks.add(CertificateContent.banner(report));
        blocks.addAll(CertificateContent.particulars(report));
        blocks.addAll(new ProofBlocks(report).all());
        blocks.addAll(CertificateContent.deviations(report));
        blocks.addAll(CertificateContent.standing(report));
        blocks.add(new Block.Heading(Message.STORY.text()));
        blocks.add(new Block.Table(CertificateContent.texts(Message.NUMBER_SHORT, Message.TIME, Message.WHO, Message.WORDS),
                List.of(2, 6, 3, 19), report.story().stream().map(RecordContent::row).toList()));
        blocks.addAll(CertificateContent.attachments(report));
        blocks.addAll(CertificateContent.amendments(report));
        blocks.addAll(CertificateContent.evidence(report));
        blocks.add(new Block.Small(Message.NO_SAFETY.text()));
        blocks.add(new Block.Small(Message.END.text()));
        return new Document(Message.RECORD.text() + " " + test, Message.RECORD.text() + " " + test + "   " + report.heading().serial(), blocks);
    }

    private static List<String> row(TestReport.StoryLine line) {
        return List.of(String.valueOf(line.sequence()), CertificateContent.inTable(line.instant()), line.who(),
                line.struck() ? Message.STRUCK.text(line.words()) : line.words());
    }
}
