package org.benchwright.report;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.benchwright.report.internal.Archive;
import org.benchwright.report.internal.CertificateContent;
import org.benchwright.report.internal.Html;
import org.benchwright.report.internal.LabelPage;
import org.benchwright.report.internal.Message;
import org.benchwright.report.internal.RecordContent;
import org.benchwright.report.internal.ReportJson;

/**
 * What is handed over of a test: certificate and label, full record, and files for machines. PDF files are PDF/A-3u.
 *
 * @param report the test
 * @param now    when it is printed
 */
public record HandOver(TestReport report, Instant now) {

    public HandOver {
        Objects.requireNonNull(report);
        Objects.requireNonNull(now);
    }

    /**
     * The certificate, with the proof and what is printed attached for machines.
     *
     * @throws NotCertifiableException of an open test, of a rehearsal, while something waits for a decision, and of one that no checkpoint tells of
     */
    public byte[] certificate() throws NotCertifiableException {
        requireCertifiable();
        return Archive.pages(new CertificateContent(report).document(), footer(), now, attached());
    }

    /**
     * The label for the unit, 62 mm wide.
     *
     * @throws NotCertifiableException as {@link #certificate}
     */
    public byte[] label() throws NotCertifiableException {
        requireCertifiable();
        return LabelPage.pdf(report, now);
    }

    /** The full record: every event, struck entries too; of a rehearsal it says that it is one. */
    public byte[] record() {
        return Archive.pages(new RecordContent(report).document(), footer(), now, attached());
    }

    /** The full record as one HTML file. */
    public String html() {
        return new Html(new RecordContent(report).document()).text();
    }

    /** Everything for machines. */
    public String json() {
        return new ReportJson(report).text();
    }

    /** Every event as CSV, safe to open in a spreadsheet. */
    public String csv() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("test", "serial", "sequence", "instant", "who", "words", "struck"));
        for (TestReport.StoryLine line : report.story()) {
            rows.add(List.of(report.heading().test(), report.heading().serial(), String.valueOf(line.sequence()), line.instant().toString(),
                    line.who(), line.words(), (line.struck() ? Message.YES : Message.NO).text()));
        }
        return Csv.of(rows);
    }

    private String footer() {
        return Message.ISSUED.text(now.truncatedTo(ChronoUnit.SECONDS).toString());
    }

    private List<Archive.Attached> attached() {
        List<Archive.Attached> files = new ArrayList<>();
        report.proof().ifPresent(proof -> files.add(new Archive.Attached("proof.json", proof.text(), Message.PROOF_FILE.text())));
        files.add(new Archive.Attached("report.json", json(), Message.DATA_FILE.text()));
        return files;
    }

    private void requireCertifiable() throws NotCertifiableException {
        if (!report.certifiable()) {
            TestReport.Heading heading = report.heading();
            Message why = heading.rehearsal() ? Message.REFUSED_REHEARSAL
                    : !heading.sealed() ? Message.REFUSED_OPEN
                    : report.standing().uncertified().isPresent() ? Message.REFUSED_STANDING : Message.REFUSED_UNCOVERED;
            throw new NotCertifiableException(why.text(heading.test(), report.standing().uncertified().orElse("")));
        }
    }
}
