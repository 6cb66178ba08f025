package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.report.TestReport;
import org.benchwright.report.internal.Block.Pair;

/**
 * Which test it was, how it ended, what became of its record, and where that stands in the ledger: alike on a certificate and in a record.
 *
 * @param report the test
 */
record TestBlocks(TestReport report) {

    /** The result, large. */
    Block banner() {
        TestReport.Heading heading = report.heading();
        if (heading.rehearsal()) {
            String would = heading.verdict().map(word -> " " + Message.WOULD_BE.text(word) + ": " + heading.reason()).orElse("");
            return new Block.Banner(Message.REHEARSAL.text(), Message.REHEARSAL_SAYS.text() + would);
        }
        String word = ReportWords.verdict(heading.verdict().orElse(""));
        return report.standing().end().map(end -> new Block.Banner(ReportWords.end(end.word()), Message.ENDED_WAS.text(end.words(), word)))
                .orElseGet(() -> new Block.Banner(word, heading.reason()));
    }

    /** Which unit, by what, where, by whom, when. */
    List<Block> particulars() {
        TestReport.Heading heading = report.heading();
        List<Pair> unit = new ArrayList<>();
        unit.add(new Pair(Message.SERIAL.text(), heading.serial()));
        unit.add(new Pair(Message.FAMILY.text(), heading.family()));
        if (heading.arrival().isEmpty()) {
            unit.add(new Pair(Message.OWNER.text(), Message.NOT_RECORDED.text()));
        } else {
            arrival(unit, heading.arrival().get());
        }
        heading.repairs().forEach(repair -> unit.add(new Pair(Message.REPAIRED.text(), repair)));
        List<Pair> work = new ArrayList<>();
        work.add(new Pair(Message.TEST.text(), heading.test()));
        heading.predecessor().ifPresent(before -> work.add(new Pair(Message.PREDECESSOR.text(), before)));
        work.add(new Pair(Message.PROCEDURE.text(),
                Message.PROCEDURE_REVISION.text(heading.procedure(), String.valueOf(heading.revision()))));
        heading.approval().ifPresent(approval -> work.add(new Pair(Message.APPROVAL.text(),
                Message.APPROVAL_BY.text(approval.preparedBy(), approval.approvedBy(), ReportWords.time(approval.instant())))));
        if (!heading.purpose().isEmpty()) {
            work.add(new Pair(Message.PURPOSE.text(), heading.purpose()));
        }
        work.add(new Pair(Message.TEXT_DIGEST.text(), heading.text()));
        work.add(new Pair(Message.STATION.text(), heading.station()));
        work.add(new Pair(Message.TECHNICIANS.text(), String.join(", ", heading.technicians())));
        work.add(new Pair(Message.BEGAN.text(), ReportWords.time(heading.opened())));
        work.add(new Pair(Message.ENDED.text(), heading.concluded().map(ReportWords::time).orElseGet(Message.NOT_ENDED::text)));
        work.add(new Pair(Message.SOFTWARE.text(), heading.software()));
        report.replaces().ifPresent(old -> work.add(new Pair(Message.REPLACES.text(), old)));
        return List.of(new Block.Heading(Message.UNIT.text()), new Block.Facts(unit), new Block.Heading(Message.CARRIED_OUT.text()),
                new Block.Facts(work));
    }

    private static void arrival(List<Pair> unit, TestReport.Arrival arrival) {
        unit.add(new Pair(Message.RECEIVED.text(), Message.RECEIVED_AS.text(ReportWords.time(arrival.received()), arrival.receipt())));
        pair(unit, Message.OWNER_ALONE, arrival.owner());
        pair(unit, Message.ORDER, arrival.order());
        pair(unit, Message.PLATE, arrival.plate());
        pair(unit, Message.COMPLAINT, arrival.complaint());
        pair(unit, Message.DAMAGE, arrival.damage());
        pair(unit, Message.PRESERVED, arrival.preserve());
    }

    private static void pair(List<Pair> unit, Message title, String text) {
        if (!text.isBlank()) {
            unit.add(new Pair(title.text(), text));
        }
    }

    /** Nonconformities and departures, each with what was decided about it. */
    List<Block> deviations() {
        List<Block> blocks = new ArrayList<>(list(Message.NONCONFORMITIES, report.nonconformities(), Message.NONCONFORMITIES_NONE));
        blocks.addAll(list(Message.DEPARTURES, report.departures(), Message.DEPARTURES_NONE));
        return blocks;
    }

    private static List<Block> list(Message title, List<String> lines, Message none) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(title.text()));
        if (lines.isEmpty()) {
            blocks.add(new Block.Text(none.text()));
        }
        lines.forEach(line -> blocks.add(new Block.Text("\u2022 " + line)));
        return blocks;
    }

    /** Where the record stands, and what was amended: the first entry struck, what is right beside it, and what follows. */
    List<Block> standing() {
        List<Block> blocks = new ArrayList<>();
        if (!report.standing().words().isEmpty()) {
            blocks.add(new Block.Heading(Message.STANDING.text()));
            blocks.add(new Block.Text(report.standing().end().map(TestReport.End::words).orElse(report.standing().words())));
        }
        if (!report.standing().corrections().isEmpty()) {
            blocks.add(new Block.Heading(Message.CORRECTIONS.text()));
            blocks.add(new Block.Table(ReportWords.texts(Message.NUMBER_SHORT, Message.FIRST, Message.RIGHT, Message.REASON, Message.BY),
                    List.of(1, 4, 4, 3, 1),
                    report.standing().corrections().stream().map(each -> List.of(String.valueOf(each.event()), Message.STRUCK.text(each.first()),
                            each.right(), each.reason(), each.by())).toList()));
            report.standing().corrections().forEach(each -> each.decided().forEach(words ->
                    blocks.add(new Block.Small(Message.CORRECTION_DECIDED.text(String.valueOf(each.event()), words)))));
        }
        return blocks;
    }

    List<Block> attachments() {
        if (report.attachments().isEmpty()) {
            return List.of();
        }
        return List.of(new Block.Heading(Message.ATTACHMENTS.text()),
                new Block.Table(ReportWords.texts(Message.FILE, Message.WHAT, Message.DIGEST), List.of(2, 2, 7),
                        report.attachments().stream().map(each -> List.of(each.name(), each.what(), each.digest())).toList()));
    }

    List<Block> amendments() {
        if (report.amendments().isEmpty()) {
            return List.of();
        }
        return List.of(new Block.Heading(Message.AMENDMENTS.text()),
                new Block.Table(ReportWords.texts(Message.NUMBER_SHORT, Message.TIME, Message.KIND, Message.BY, Message.WORDS),
                        List.of(1, 3, 2, 2, 5),
                        report.amendments().stream().map(each -> List.of(String.valueOf(each.sequence()), ReportWords.inTable(each.instant()),
                                each.kind().replace('-', ' '),
                                each.by(), each.words())).toList()));
    }

    /** Where the test stands in the ledger, in print and for a machine's eye. */
    List<Block> evidence() {
        if (report.proof().isEmpty()) {
            return List.of(new Block.Heading(Message.EVIDENCE.text()), new Block.Text(Message.EVIDENCE_NONE.text()));
        }
        List<String> lines = evidenceLines(report.proof().get());
        return List.of(new Block.Heading(Message.EVIDENCE.text()), new Block.Text(Message.SIGNED_WORDS.text()),
                new Block.Square(squareText(), lines),
                new Block.Small(Message.EVIDENCE_HOW.text(report.heading().test(), String.valueOf(report.proof().get().sequence()))));
    }

    private List<String> evidenceLines(InclusionProof proof) {
        Checkpoint checkpoint = proof.checkpoint().checkpoint();
        return List.of(report.number() + "   " + report.heading().serial(),
                Message.QR_TEST.text(report.heading().test(), String.valueOf(proof.sequence())), Message.QR_LINK.text(proof.link().hex()),
                Message.QR_POSITION.text(String.valueOf(proof.position())),
                Message.QR_CHECKPOINT.text(String.valueOf(checkpoint.number()), ReportWords.time(checkpoint.instant()),
                        String.valueOf(checkpoint.size())),
                Message.QR_ROOT.text(checkpoint.root().hex()), Message.QR_KEY.text(checkpoint.fingerprint().hex()));
    }

    /**
     * The square's content: lines of name and value that tell what to compare, and with what. Needs a proof.
     */
    private String squareText() {
        InclusionProof proof = report.proof().orElseThrow();
        Checkpoint checkpoint = proof.checkpoint().checkpoint();
        return String.join("\n", "BENCHWRIGHT-CERTIFICATE/1", "number " + report.number(), "serial " + report.heading().serial(),
                "verdict " + report.heading().verdict().orElse("none") + report.standing().end().map(end -> ", " + end.word()).orElse(""),
                "event " + proof.sequence(), "link " + proof.link().hex(),
                "checkpoint " + checkpoint.number(), "size " + checkpoint.size(), "root " + checkpoint.root().hex(),
                "key " + checkpoint.fingerprint().hex());
    }
}
