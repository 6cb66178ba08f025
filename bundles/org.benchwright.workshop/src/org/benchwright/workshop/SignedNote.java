package org.benchwright.workshop;

import java.time.Instant;

/**
 * Something that was signed after a test's seal.
 *
 * @param sequence the event's number
 * @param instant  when
 * @param kind     the event's kind, such as {@code amended}
 * @param by       who signed, in print
 * @param words    the reason given, or how the unit came back; may be empty
 * @param trusted  false if the key that signed it was revoked since, and from before: nobody relies on it any more
 */
public record SignedNote(long sequence, Instant instant, String kind, String by, String words, boolean trusted) {
}
