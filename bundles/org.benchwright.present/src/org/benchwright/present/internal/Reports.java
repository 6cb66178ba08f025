package org.benchwright.present.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.OpeningHours;
import org.benchwright.present.VerificationReport;
import org.benchwright.present.VerificationReport.Line;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.RecordFault;

/** Verification reports for people. */
public final class Reports {

    private Reports() {
    }

    /**
     * The report.
     *
     * @param now wall time
     */
    public static VerificationReport of(LedgerReport found, Instant now) {
        Line links = line(Message.LINE_LINKS, found.links(), found.events(), found.tests(), found.documents(),
                count(found.links()));
        Line signatures = line(Message.LINE_SIGNATURES, found.signatures(), found.signers().size(), count(found.signatures()));
        Line decisions = line(Message.LINE_DECISIONS, found.decisions(), found.derived(), found.tests(),
                count(found.decisions()));
        if (found.leftOut() > 0) {
            List<String> faults = new ArrayList<>(decisions.faults());
            faults.add(Message.FAULTS_LEFT_OUT.text(found.leftOut()));
            decisions = new Line(decisions.words(), faults);
        }
        return new VerificationReport(List.of(links, signatures, decisions), found.signers(),
                found.open().stream().map(test -> Rows.of(test.id(), test.run(), now, OpeningHours.unknown())).toList(),
                found.late().stream().map(RecordFault::toString).toList(), found.reviewsDue(), found.withdrawn().stream().map(RecordFault::toString).toList(),
                found.bytesLeft(), found.benchKnown() || found.signers().isEmpty() ? Optional.empty() : Optional.of(Message.NOBODYS.text()), found.sound());
    }

    private static Line line(Message words, List<RecordFault> faults, Object... arguments) {
        return new Line(words.text(arguments), faults.stream().map(RecordFault::toString).toList());
    }

    private static String count(List<RecordFault> faults) {
        return faults.isEmpty() ? Message.FAULTS_NONE.text() : Message.FAULTS.text(faults.size());
    }
}
