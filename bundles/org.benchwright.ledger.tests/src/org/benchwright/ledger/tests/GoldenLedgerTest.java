package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A ledger as format 1 was written, kept as a file: whatever comes later has to read and verify it. It is never made anew. */
class GoldenLedgerTest {

    private static final String ROOT = "629634ef5149f311c4e4f5313f4395b549ed1b190737505a087e358fc96b6299";

    @TempDir
    Path folder;

    private Path ledger;

    @BeforeEach
    void copy() throws Exception {
        ledger = folder.resolve("bench.ledger");
        try (InputStream file = GoldenLedgerTest.class.getResourceAsStream("golden/format-1.ledger");
                InputStream key = GoldenLedgerTest.class.getResourceAsStream("golden/format-1.pub")) {
            Files.copy(file, ledger);
            Files.copy(key, folder.resolve(BenchKeyStore.PUBLIC_FILE));
        }
    }

    @Test
    void verifiesAsOnTheDayItWasWritten() throws Exception {
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(ledger));
        assertEquals(List.of(), verification.faults());
        assertEquals(23, verification.events());
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            assertEquals(ROOT, open.checkpoints().get(1).root().hex());
        }
    }

    @Test
    void workGoesOnInItAndOnlyTheNewKeyIsForeign() throws Exception {
        BenchKey key = BenchKeyStore.openOrCreate(folder.resolve("other"));
        try (Ledger open = SqliteLedger.open(ledger)) {
            TestId third = open.tests().get(2);
            open.append(third, 7, List.of(new SampleLedger(open, key).observation(third, 7)));
            assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(ledger)).faults());
            new SampleLedger(open, key).seal(third, 8);
        }
        assertEquals(List.of(FaultKind.FOREIGN_KEY, FaultKind.FOREIGN_KEY), LedgerVerifier.verify(VerificationRequest.of(ledger)).faults()
                .stream().map(fault -> fault.kind()).toList());
    }
}
