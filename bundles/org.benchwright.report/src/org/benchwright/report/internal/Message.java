package org.benchwright.report.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this bundle that people read. A certificate has one language, whatever the machine's. */
public enum Message {
    CERTIFICATE, CERTIFICATE_BELOW, RECORD, RECORD_BELOW, REPLACES, VERDICT_ACCEPTED, VERDICT_REJECTED, VERDICT_UNDECIDED,
    VERDICT_OPEN, WOULD_BE, UNIT, SERIAL, FAMILY, TEST, PREDECESSOR, PROCEDURE, PROCEDURE_REVISION, APPROVAL, APPROVAL_BY, PURPOSE, TEXT_DIGEST, CARRIED_OUT,
    STATION, TECHNICIANS, BEGAN, ENDED, NOT_ENDED, SOFTWARE, OWNER, NOT_RECORDED, RESULTS, RESULTS_NONE, WHAT, VALUE, LIMITS, UNCERTAINTY,
    MARGIN, OUTCOME, RULE, CERTAINTY, CERTAINTY_HOW, GUARD_BAND, CONFORMANCE, FALSE_ACCEPT, READINGS, STEP, DECISION, SOAK, SOAK_NONE, INSTRUMENTS, INSTRUMENTS_NONE, INSTRUMENT, ASSET, DUE, DEPARTURES,
    DEPARTURES_NONE, DEPARTURES_UNDECIDED, NONCONFORMITIES, NONCONFORMITIES_NONE, ATTACHMENTS, FILE, DIGEST, AMENDMENTS, NUMBER_SHORT, TIME,
    KIND, BY, WORDS, SIGNED_WORDS, EVIDENCE, EVIDENCE_HOW, EVIDENCE_NONE, QR_TEST, QR_LINK, QR_POSITION, QR_CHECKPOINT, QR_ROOT, QR_KEY, CONDITIONS,
    ONLY_THIS, IN_FULL, UNCERTAINTY_STATED, NO_SAFETY, NO_ACCREDITATION, END, STORY, WHO, STRUCK, REHEARSAL, REHEARSAL_SAYS, PAGE, ISSUED, YES, NO,
    REFUSED_OPEN, REFUSED_REHEARSAL, REFUSED_UNCOVERED, LABEL_TESTED, LABEL_LIMIT, PROOF_FILE, DATA_FILE;

    private static final String BUNDLE = "org.benchwright.report.internal.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    public String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.ROOT, Message.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
