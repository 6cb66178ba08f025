package org.benchwright.engine.receipt;

/**
 * A part that was put in the place of another.
 *
 * @param part what it is and where it sits
 * @param lot  from which lot or delivery it is; may be empty
 */
public record ReplacedPart(String part, String lot) {
}
