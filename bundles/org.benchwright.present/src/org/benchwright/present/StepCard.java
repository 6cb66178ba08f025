package org.benchwright.present;

import java.util.List;
import java.util.Optional;

/**
 * One thing to do, as large as the screen lets it be.
 *
 * @param unit        which unit, by which procedure; says so if it is a rehearsal
 * @param place       stage and step
 * @param instruction what to do, in capitals; empty where there is only a question
 * @param hazards     hazards to read now, in full
 * @param reminders   hazards of this step that were read already, one line each
 * @param preserved   what the owner must not lose, where this step could destroy something
 * @param expected    the indications to watch for
 * @param question    what is asked
 * @param parts       what to enter, one after the other; mostly one
 * @param lines       true if several lines are entered, up to an empty one
 * @param countdown   what time brings, where the step waits for it
 * @param keys        what can be done besides answering
 */
public record StepCard(String unit, String place, String instruction, List<HazardPanel> hazards, List<String> reminders,
        List<String> preserved, List<String> expected, String question, List<String> parts, boolean lines, Optional<Countdown> countdown,
        List<KeyHint> keys) {

    public StepCard {
        hazards = List.copyOf(hazards);
        reminders = List.copyOf(reminders);
        preserved = List.copyOf(preserved);
        expected = List.copyOf(expected);
        parts = List.copyOf(parts);
        keys = List.copyOf(keys);
    }

    /** The same place, at which something else is asked first. */
    StepCard asking(String first, String how) {
        return new StepCard(unit, place, "", List.of(), List.of(), List.of(), List.of(), first, List.of(how), false, Optional.empty(), keys);
    }

    /**
     * A key and what it does.
     *
     * @param key   what to type
     * @param words what it does
     */
    public record KeyHint(String key, String words) {
    }
}
