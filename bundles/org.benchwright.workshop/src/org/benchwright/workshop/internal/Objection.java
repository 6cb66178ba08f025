package org.benchwright.workshop.internal;

/**
 * An event of a book that does not hold: it can't be read, does not fit, or its signer had no right to it.
 *
 * @param sequence its number
 * @param words    why
 */
record Objection(long sequence, String words) {
}
