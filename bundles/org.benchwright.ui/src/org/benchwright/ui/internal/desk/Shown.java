package org.benchwright.ui.internal.desk;

import java.util.List;
import java.util.Optional;

import org.benchwright.present.Ending;
import org.benchwright.present.EntryKind;
import org.benchwright.present.ExpectedIndication;
import org.benchwright.present.FaultNotes;
import org.benchwright.present.StepCard;
import org.benchwright.present.TimelineLine;

/**
 * A test as it was at one moment, for those who draw it.
 *
 * @param version   grows by one with every change of the test; an answer names the version that it answers
 * @param test      the test's id
 * @param serial    the unit's serial number
 * @param rehearsal true if time is skipped
 * @param key       the key by which an answers file names what is asked
 * @param card      the card
 * @param kind      what kind of answer is asked
 * @param drawings  indications to watch for
 * @param deadline  what time brings
 * @param ending    how it ended
 * @param soFar     what happened so far
 * @param last      what came of the last entry
 * @param notes     what the family's notes tell of fault codes, where a fault log is asked for
 * @param live      what is energised, as the procedure calls it
 * @param secret    whose password or PIN is asked now; empty if none is
 * @param tapsAlong true if the answer can be tapped along with a lamp
 * @param onSoak    true while the unit is on soak, as far as is known here; a watch may have written since that it has stopped
 * @param looksWithOneKey true if a unit on soak is to be looked at, and nothing has to be read
 * @param elsewhere true if somebody else has taken the test up; nothing can be entered here
 */
public record Shown(long version, String test, String serial, boolean rehearsal, String key, StepCard card, EntryKind kind,
        List<ExpectedIndication> drawings, Optional<Deadline> deadline, Optional<Ending> ending, List<TimelineLine> soFar, Last last,
        FaultNotes notes, List<String> live, Optional<Secret> secret, boolean tapsAlong, boolean onSoak, boolean looksWithOneKey,
        boolean elsewhere) {

    /**
     * A secret that is asked.
     *
     * @param person whose
     * @param pin    true for the PIN under a test, false for the password of a release
     */
    public record Secret(String person, boolean pin) {
    }

    public Shown {
        drawings = List.copyOf(drawings);
        soFar = List.copyOf(soFar);
        live = List.copyOf(live);
    }

    /** True if the make-safe key can be used: until the unit is being made safe already, or the test is over. */
    public boolean canMakeSafe() {
        return card.keys().stream().anyMatch(hint -> hint.key().equals("!"));
    }

    Shown with(Last other) {
        return new Shown(version, test, serial, rehearsal, key, card, kind, drawings, deadline, ending, soFar, other, notes, live, secret,
                tapsAlong, onSoak,
                looksWithOneKey, elsewhere);
    }
}
