package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.report.TestReport;

/**
 * What a certificate says: what ISO/IEC 17025, 7.8.2 asks of a report, in an order of its own.
 *
 * @param report the test
 */
public record CertificateContent(TestReport report) {

    /** The document. */
    public Document document() {
        TestReport.Heading heading = report.heading();
        TestBlocks about = new TestBlocks(report);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Title(Message.CERTIFICATE.text(), Message.CERTIFICATE_BELOW.text(report.number())));
        blocks.add(about.banner());
        blocks.addAll(about.particulars());
        blocks.addAll(findings(about));
        blocks.addAll(about.evidence());
        blocks.addAll(conditions());
        return new Document(Message.CERTIFICATE.text() + " " + report.number(),
                Message.CERTIFICATE.text() + " " + report.number() + "   " + heading.serial(), blocks);
    }

    private List<Block> findings(TestBlocks about) {
        List<Block> blocks = new ArrayList<>();
        blocks.addAll(new ProofBlocks(report).all());
        blocks.add(new Block.Heading(Message.INSTRUMENTS.text()));
        blocks.add(report.instruments().isEmpty() ? new Block.Text(Message.INSTRUMENTS_NONE.text())
                : new Block.Table(ReportWords.texts(Message.INSTRUMENT, Message.ASSET, Message.UNCERTAINTY, Message.DUE), List.of(4, 3, 4, 2),
                        report.instruments().stream().map(each -> List.of(each.name(), each.asset(), each.uncertainty(), each.due()))
                                .toList()));
        blocks.addAll(about.deviations());
        if (!report.departures().isEmpty() && report.amendments().stream().noneMatch(each -> each.kind().equals("departure-decided"))) {
            blocks.add(new Block.Small(Message.DEPARTURES_UNDECIDED.text()));
        }
        blocks.addAll(about.standing());
        blocks.addAll(about.attachments());
        blocks.addAll(about.amendments());
        return blocks;
    }

    private static List<Block> conditions() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(Message.CONDITIONS.text()));
        for (Message words : List.of(Message.ONLY_THIS, Message.UNCERTAINTY_STATED, Message.NO_SAFETY, Message.NO_ACCREDITATION,
                Message.IN_FULL, Message.END)) {
            blocks.add(new Block.Small(words.text()));
        }
        return blocks;
    }
}
