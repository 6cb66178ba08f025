package org.benchwright.report.internal;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.report.TestReport;
import org.benchwright.report.internal.Block.Pair;

/**
 * What a certificate says: what ISO/IEC 17025, 7.8.2 asks of a report, in an order of its own.
 *
 * @param report the test
 */
public record CertificateContent(TestReport report) {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** An instant on paper, in UTC. */
    static String time(Instant instant) {
        return inTable(instant) + " UTC";
    }

    /** An instant in a column that says UTC by its title. */
    static String inTable(Instant instant) {
        return TIME.format(instant);
    }

    /** The document. */
    public Document document() {
        TestReport.Heading heading = report.heading();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Title(Message.CERTIFICATE.text(), Message.CERTIFICATE_BELOW.text(report.number())));
        blocks.add(banner(report));
        blocks.addAll(particulars(report));
        blocks.addAll(findings());
        blocks.addAll(evidence(report));
        blocks.addAll(conditions());
        return new Document(Message.CERTIFICATE.text() + " " + report.number(),
                Message.CERTIFICATE.text() + " " + report.number() + "   " + heading.serial(), blocks);
    }

    /** The result, large. */
    static Block banner(TestReport report) {
        TestReport.Heading heading = report.heading();
        if (heading.rehearsal()) {
            String would = heading.verdict().map(word -> " " + Message.WOULD_BE.text(word) + ": " + heading.reason()).orElse("");
            return new Block.Banner(Message.REHEARSAL.text(), Message.REHEARSAL_SAYS.text() + would);
        }
        String word = verdict(heading.verdict().orElse(""));
        return report.standing().end().map(end -> new Block.Banner(end(end.word()), Message.ENDED_WAS.text(end.words(), word)))
                .orElseGet(() -> new Block.Banner(word, heading.reason()));
    }

    private static String verdict(String word) {
        return switch (word) {
            case "accepted" -> Message.VERDICT_ACCEPTED.text();
            case "rejected" -> Message.VERDICT_REJECTED.text();
            case "undecided" -> Message.VERDICT_UNDECIDED.text();
            default -> Message.VERDICT_OPEN.text();
        };
    }

    /** How a record ended, large. */
    static String end(String word) {
        return switch (word) {
            case "superseded" -> Message.END_SUPERSEDED.text();
            case "recalled" -> Message.END_RECALLED.text();
            default -> Message.END_VOID.text();
        };
    }

    /** What stands large on a label. */
    static String large(TestReport report) {
        return report.standing().end().map(end -> end(end.word())).orElseGet(() -> verdict(report.heading().verdict().orElse("")));
    }

    /** Where the record stands, and what was amended: the first entry struck, what is right beside it, and what follows. */
    static List<Block> standing(TestReport report) {
        List<Block> blocks = new ArrayList<>();
        if (!report.standing().words().isEmpty()) {
            blocks.add(new Block.Heading(Message.STANDING.text()));
            blocks.add(new Block.Text(report.standing().end().map(TestReport.End::words).orElse(report.standing().words())));
        }
        if (!report.standing().corrections().isEmpty()) {
            blocks.add(new Block.Heading(Message.CORRECTIONS.text()));
            blocks.add(new Block.Table(texts(Message.NUMBER_SHORT, Message.FIRST, Message.RIGHT, Message.REASON, Message.BY), List.of(1, 4, 4, 3, 1),
                    report.standing().corrections().stream().map(each -> List.of(String.valueOf(each.event()), Message.STRUCK.text(each.first()),
                            each.right(), each.reason(), each.by())).toList()));
            report.standing().corrections().forEach(each -> each.decided().forEach(words ->
                    blocks.add(new Block.Small(Message.CORRECTION_DECIDED.text(String.valueOf(each.event()), words)))));
        }
        return blocks;
    }

    /** Which unit, by what, where, by whom, when. */
    static List<Block> particulars(TestReport report) {
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
                Message.APPROVAL_BY.text(approval.preparedBy(), approval.approvedBy(), time(approval.instant())))));
        if (!heading.purpose().isEmpty()) {
            work.add(new Pair(Message.PURPOSE.text(), heading.purpose()));
        }
        work.add(new Pair(Message.TEXT_DIGEST.text(), heading.text()));
        work.add(new Pair(Message.STATION.text(), heading.station()));
        work.add(new Pair(Message.TECHNICIANS.text(), String.join(", ", heading.technicians())));
        work.add(new Pair(Message.BEGAN.text(), time(heading.opened())));
        work.add(new Pair(Message.ENDED.text(), heading.concluded().map(CertificateContent::time).orElseGet(Message.NOT_ENDED::text)));
        work.add(new Pair(Message.SOFTWARE.text(), heading.software()));
        report.replaces().ifPresent(old -> work.add(new Pair(Message.REPLACES.text(), old)));
        return List.of(new Block.Heading(Message.UNIT.text()), new Block.Facts(unit), new Block.Heading(Message.CARRIED_OUT.text()),
                new Block.Facts(work));
    }

    private static void arrival(List<Pair> unit, TestReport.Arrival arrival) {
        unit.add(new Pair(Message.RECEIVED.text(), Message.RECEIVED_AS.text(time(arrival.received()), arrival.receipt())));
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

    private List<Block> findings() {
        List<Block> blocks = new ArrayList<>();
        blocks.addAll(new ProofBlocks(report).all());
        blocks.add(new Block.Heading(Message.INSTRUMENTS.text()));
        blocks.add(report.instruments().isEmpty() ? new Block.Text(Message.INSTRUMENTS_NONE.text())
                : new Block.Table(texts(Message.INSTRUMENT, Message.ASSET, Message.UNCERTAINTY, Message.DUE), List.of(4, 3, 4, 2),
                        report.instruments().stream().map(each -> List.of(each.name(), each.asset(), each.uncertainty(), each.due()))
                                .toList()));
        blocks.addAll(deviations(report));
        if (!report.departures().isEmpty() && report.amendments().stream().noneMatch(each -> each.kind().equals("departure-decided"))) {
            blocks.add(new Block.Small(Message.DEPARTURES_UNDECIDED.text()));
        }
        blocks.addAll(standing(report));
        blocks.addAll(attachments(report));
        blocks.addAll(amendments(report));
        return blocks;
    }

    /** Nonconformities and departures, each with what was decided about it. */
    static List<Block> deviations(TestReport report) {
        List<Block> blocks = new ArrayList<>(list(Message.NONCONFORMITIES, report.nonconformities(), Message.NONCONFORMITIES_NONE));
        blocks.addAll(list(Message.DEPARTURES, report.departures(), Message.DEPARTURES_NONE));
        return blocks;
    }

    static List<String> texts(Message... messages) {
        return List.of(messages).stream().map(Message::text).toList();
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

    static List<Block> attachments(TestReport report) {
        if (report.attachments().isEmpty()) {
            return List.of();
        }
        return List.of(new Block.Heading(Message.ATTACHMENTS.text()),
                new Block.Table(texts(Message.FILE, Message.WHAT, Message.DIGEST), List.of(2, 2, 7),
                        report.attachments().stream().map(each -> List.of(each.name(), each.what(), each.digest())).toList()));
    }

    static List<Block> amendments(TestReport report) {
        if (report.amendments().isEmpty()) {
            return List.of();
        }
        return List.of(new Block.Heading(Message.AMENDMENTS.text()),
                new Block.Table(texts(Message.NUMBER_SHORT, Message.TIME, Message.KIND, Message.BY, Message.WORDS), List.of(1, 3, 2, 2, 5),
                        report.amendments().stream().map(each -> List.of(String.valueOf(each.sequence()), inTable(each.instant()), each.kind().replace('-', ' '),
                                each.by(), each.words())).toList()));
    }

    /** Where the test stands in the ledger, in print and for a machine's eye. */
    static List<Block> evidence(TestReport report) {
        if (report.proof().isEmpty()) {
            return List.of(new Block.Heading(Message.EVIDENCE.text()), new Block.Text(Message.EVIDENCE_NONE.text()));
        }
        List<String> lines = evidenceLines(report, report.proof().get());
        return List.of(new Block.Heading(Message.EVIDENCE.text()), new Block.Text(Message.SIGNED_WORDS.text()),
                new Block.Square(squareText(report), lines),
                new Block.Small(Message.EVIDENCE_HOW.text(report.heading().test(), String.valueOf(report.proof().get().sequence()))));
    }

    private static List<String> evidenceLines(TestReport report, InclusionProof proof) {
        Checkpoint checkpoint = proof.checkpoint().checkpoint();
        return List.of(report.number() + "   " + report.heading().serial(),
                Message.QR_TEST.text(report.heading().test(), String.valueOf(proof.sequence())), Message.QR_LINK.text(proof.link().hex()),
                Message.QR_POSITION.text(String.valueOf(proof.position())),
                Message.QR_CHECKPOINT.text(String.valueOf(checkpoint.number()), time(checkpoint.instant()), String.valueOf(checkpoint.size())),
                Message.QR_ROOT.text(checkpoint.root().hex()), Message.QR_KEY.text(checkpoint.fingerprint().hex()));
    }

    /**
     * The square's content: lines of name and value that tell what to compare, and with what. Needs a proof.
     */
    public static String squareText(TestReport report) {
        InclusionProof proof = report.proof().orElseThrow();
        Checkpoint checkpoint = proof.checkpoint().checkpoint();
        return String.join("\n", "BENCHWRIGHT-CERTIFICATE/1", "number " + report.number(), "serial " + report.heading().serial(),
                "verdict " + report.heading().verdict().orElse("none") + report.standing().end().map(end -> ", " + end.word()).orElse(""), "event " + proof.sequence(), "link " + proof.link().hex(),
                "checkpoint " + checkpoint.number(), "size " + checkpoint.size(), "root " + checkpoint.root().hex(),
                "key " + checkpoint.fingerprint().hex());
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
