package org.benchwright.present;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A unit on the bench: one open test.
 *
 * @param test      the test's id
 * @param serial    the unit's serial number
 * @param family    its family
 * @param procedure the procedure with its revision
 * @param stage     where the test is, and what was repaired before it
 * @param soakLeft  time of the soak not witnessed yet; empty unless on soak
 * @param nextLook  when the next look is due; empty unless on soak
 * @param overdue   true if that was in the past
 * @param state     what it waits for
 * @param rehearsal true if it is a rehearsal
 * @param watch     what its watch told last; empty unless on a soak that asks for one
 * @param alarm     true if that needs somebody: the watch cannot see, or is not heard of
 * @param position  where it stands in the rack; empty where nobody said so
 * @param technician who has the test
 * @param reminder  what the shop's opening hours mean for the next look: nobody is in when it is due; mostly empty
 * @param lookBy    when a look that was not taken becomes a departure; empty unless on soak
 * @param keeps     what the unit has to show on soak; empty unless on soak
 */
public record UnitRow(String test, String serial, String family, String procedure, String stage, Optional<Duration> soakLeft,
        Optional<Instant> nextLook, boolean overdue, String state, boolean rehearsal, String watch,
        boolean alarm, Optional<String> position, String technician, Optional<String> reminder, Optional<Instant> lookBy, String keeps) {
}
