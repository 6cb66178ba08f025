package org.benchwright.ui.internal.house;

import java.util.Optional;

/**
 * Tells a scanner from fingers: it types at least {@value #SHORTEST} characters and Enter, none of them more than {@value #LONGEST_GAP} ms
 * after the one before. Immutable.
 *
 * @param typed what came so far
 * @param last  when the last key came, in ms; of any clock that goes forward
 */
record Scanner(String typed, long last) {

    static final int SHORTEST = 4;
    static final long LONGEST_GAP = 60;
    private static final int LONGEST = 200;

    /** Nothing came yet. */
    static Scanner idle() {
        return new Scanner("", 0);
    }

    /** After a key that gave a character, a control character of the scanner's among them. */
    Scanner with(char character, long now) {
        boolean goesOn = !typed.isEmpty() && now - last <= LONGEST_GAP && typed.length() < LONGEST;
        return new Scanner(goesOn ? typed + character : String.valueOf(character), now);
    }

    /** What was scanned, now that Enter was pressed; empty if it was fingers. */
    Optional<String> entered(long now) {
        return typed.length() >= SHORTEST && now - last <= LONGEST_GAP ? Optional.of(typed) : Optional.empty();
    }
}
