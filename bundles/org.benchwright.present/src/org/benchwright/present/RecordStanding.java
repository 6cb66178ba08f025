package org.benchwright.present;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where a sealed record stands, and what it takes.
 *
 * @param words       where it stands, in words
 * @param number      the number of its certificate now
 * @param end         by whom, when and why it was superseded, recalled or voided; empty if it was not
 * @param uncertified why there is no certificate as things stand, and what to do; empty if there is one
 * @param deviations  departures and nonconformities, in order
 * @param corrections what was amended, in order
 * @param entries     what can be amended, in order
 * @param attachments what was attached, in order
 * @param objections  why a deed is not taken; whatever is not in it is
 */
public record RecordStanding(String words, String number, Optional<String> end, Optional<String> uncertified, List<DeviationRow> deviations,
        List<Correction> corrections, List<TimelineLine> entries, List<Attachment> attachments, Map<AuditDeed, String> objections) {

    public RecordStanding {
        deviations = List.copyOf(deviations);
        corrections = List.copyOf(corrections);
        entries = List.copyOf(entries);
        attachments = List.copyOf(attachments);
        objections = Map.copyOf(objections);
    }

    /**
     * A file that was attached.
     *
     * @param event     number of the event that attached it
     * @param name      the file's name
     * @param withdrawn by whom, when and why its bytes were taken away; empty if they were not
     */
    public record Attachment(long event, String name, Optional<String> withdrawn) {
    }

    /**
     * What was amended.
     *
     * @param event   number of the event that is corrected
     * @param first   what was entered first; it stays readable
     * @param right   what is right
     * @param reason  why
     * @param by      who says so
     * @param instant when
     * @param decided what would have been decided with it beside what was, a sentence each; empty where nothing was decided on it
     */
    public record Correction(long event, String first, String right, String reason, String by, Instant instant, List<String> decided) {
        public Correction {
            decided = List.copyOf(decided);
        }
    }
}
