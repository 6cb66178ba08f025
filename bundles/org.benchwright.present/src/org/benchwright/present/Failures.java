package org.benchwright.present;

import org.benchwright.present.internal.Message;
import org.benchwright.workshop.FaultyRecordException;

/** What the workshop can't do, for those who look at a screen. */
final class Failures {

    private Failures() {
    }

    static CannotStoreException cannotStore(Exception e) {
        String words = e instanceof FaultyRecordException ? Message.RECORD_NOT_SOUND.text(e.getMessage()) : e.getMessage();
        return new CannotStoreException(words, e);
    }
}
