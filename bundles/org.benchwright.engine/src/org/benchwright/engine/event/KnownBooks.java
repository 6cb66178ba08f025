package org.benchwright.engine.event;

/**
 * How far a bench knew the books. Where benches share a ledger, the books there may have gone on before the test arrives.
 *
 * @param people    number of the last event about people
 * @param revisions number of the last event about revisions
 */
public record KnownBooks(long people, long revisions) {
}
