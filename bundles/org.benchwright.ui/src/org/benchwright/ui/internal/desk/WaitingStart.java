package org.benchwright.ui.internal.desk;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

import org.benchwright.present.BatchStart;
import org.benchwright.ui.internal.Message;

/**
 * A test of a batch that isn't open yet.
 *
 * @param request what to open
 * @param due     when; empty once it was refused: then it waits for a person
 * @param refused why it could not be opened when it was due; empty before
 * @param opening true while it is being opened
 */
public record WaitingStart(Desk.Request request, Optional<Instant> due, Optional<String> refused, boolean opening) {

    /** The unit's serial number. */
    public String serial() {
        return request.serial();
    }

    /**
     * What becomes of it, in words: when it begins, that it is being opened, or why it wasn't.
     *
     * @param zone in which times are shown
     */
    public String words(Instant now, ZoneId zone) {
        if (opening) {
            return Message.WAITING_OPENING.text();
        }
        return refused.map(Message.WAITING_REFUSED::text)
                .orElseGet(() -> due.map(at -> new BatchStart.Start(serial(), at).words(now, zone)).orElse(""));
    }
}
