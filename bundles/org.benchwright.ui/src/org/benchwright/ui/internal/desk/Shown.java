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
 * @param elsewhere true if somebody else has taken the test up; nothing can be entered here
 */
public record Shown(long version, String test, String serial, boolean rehearsal, String key, StepCard card, EntryKind kind,
        List<ExpectedIndication> drawings, Optional<Deadline> deadline, Optional<Ending> ending, List<TimelineLine> soFar, Last last,
        FaultNotes notes, boolean elsewhere) {

    public Shown {
        drawings = List.copyOf(drawings);
        soFar = List.copyOf(soFar);
    }

    /** True if the make-safe key can be used: until the unit is being made safe already, or the test is over. */
    public boolean canMakeSafe() {
        return card.keys().stream().anyMatch(hint -> hint.key().equals("!"));
    }

    Shown with(Last other) {
        return new Shown(version, test, serial, rehearsal, key, card, kind, drawings, deadline, ending, soFar, other, notes, elsewhere);
    }
}
