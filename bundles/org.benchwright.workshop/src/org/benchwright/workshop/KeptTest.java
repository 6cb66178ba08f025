package org.benchwright.workshop;

import java.util.Optional;

import org.benchwright.engine.InTheField;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.record.TestRecord;

/**
 * A test as the ledger keeps it.
 *
 * @param id     its id
 * @param run    what its events make
 * @param sealed true once the work on it is over and signed
 * @param field  where its unit is after the seal; empty before
 * @param record what was signed about it after the seal; empty before
 */
public record KeptTest(String id, TestRun run, boolean sealed, Optional<InTheField> field, Optional<TestRecord> record) {
}
