package org.benchwright.present;

import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.present.internal.HouseWords;

/**
 * Explains the lines of a fault log while they are typed or pasted.
 *
 * @param notes what the family's notes tell
 */
public record FaultNotes(List<FaultExplanation> notes) {

    public FaultNotes {
        notes = List.copyOf(notes);
    }

    /** Whether there is anything to explain. */
    public boolean any() {
        return !notes.isEmpty();
    }

    /**
     * A line for each line that has a code.
     *
     * @param typed what was typed so far; columns of a spreadsheet among it are separated by tabs
     */
    public String explained(String typed) {
        return typed.lines().map(String::strip).filter(line -> !line.isEmpty()).map(line -> explain(line.split("\\s+", 2)[0])).collect(Collectors.joining("\n"));
    }

    private String explain(String code) {
        return notes.stream().filter(note -> note.code().equals(code)).findFirst().map(FaultNotes::words).orElseGet(() -> HouseWords.FAULT_NOT_IN_NOTES.text(code));
    }

    private static String words(FaultExplanation note) {
        String next = note.next().isEmpty() ? note.means() : note.next();
        return next.isEmpty() ? HouseWords.FAULT_NOTE.text(note.code(), note.title()) : HouseWords.FAULT_NOTE_NEXT.text(note.code(), note.title(), next);
    }
}
