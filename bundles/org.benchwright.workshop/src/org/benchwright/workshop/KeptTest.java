package org.benchwright.workshop;

import org.benchwright.engine.TestRun;

/**
 * A test as the ledger keeps it.
 *
 * @param id     its id
 * @param run    what its events make
 * @param sealed true once the work on it is over and signed
 */
public record KeptTest(String id, TestRun run, boolean sealed) {
}
