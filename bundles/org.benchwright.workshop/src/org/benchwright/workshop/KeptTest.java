package org.benchwright.workshop;

import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.InTheField;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.record.Standing;
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

    /** False where the verdict says nothing of the unit any more: the record was made void, or the test is to be repeated. */
    public boolean counts() {
        return record.map(TestRecord::standing).filter(standing -> standing == Standing.VOID || standing == Standing.TO_REPEAT).isEmpty();
    }

    /** True if the unit passed, and that still counts. */
    public boolean passed() {
        return counts() && run.verdict().equals(Optional.of(Verdict.ACCEPTED));
    }
}
