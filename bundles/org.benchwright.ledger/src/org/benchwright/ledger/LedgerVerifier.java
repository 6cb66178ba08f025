package org.benchwright.ledger;

import java.util.List;
import org.benchwright.ledger.internal.SecondView;
import org.benchwright.ledger.internal.SqliteFile;
import org.benchwright.ledger.internal.verify.LedgerWalk;

/**
 * Finds what was changed in a ledger that nobody vouches for. It reads one unchanging view of the file and writes nothing. Whatever the file
 * holds, it ends with a list of faults; an exception tells only that the file can't be read as a ledger at all.
 */
public final class LedgerVerifier {

    private LedgerVerifier() {
    }

    /**
     * Verifies a ledger.
     *
     * @throws LedgerMissingException when there is no file
     * @throws LedgerFormatException  when the file is not a ledger
     * @throws LedgerVersionException when a newer release wrote it
     * @throws LedgerException        when it can't be read for another reason
     */
    public static Verification verify(VerificationRequest request) throws LedgerException {
        LedgerOptions options = LedgerOptions.standard();
        try (SqliteFile file = SqliteFile.openReadOnly(request.ledger(), options); SecondView second = file.secondView(options)) {
            return file.read(connection -> new LedgerWalk(connection, second.beside(connection), file.path(), request).run());
        } catch (LedgerDamagedException damaged) {
            // A ledger, but not one of its tables can be reached.
            Fault fault = Fault.ofLedger(FaultKind.STORE_DAMAGED, damaged.getMessage());
            return new Verification(List.of(fault), 0, 0, 0, List.of(), List.of(), List.of(), List.of(), false);
        }
    }
}
