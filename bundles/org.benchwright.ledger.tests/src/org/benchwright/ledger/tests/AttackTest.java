package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.VerifiedTest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Attacks by name. The ledger holds four tests of ten events, interleaved: position = 4 * (number - 1) + test up to number 9, then the seals
 * of the first three at 37 to 39. The fourth is open. Whoever attacks puts the triggers back, so that only the deed itself can be found.
 */
class AttackTest {

    private static final String COLUMNS = "test_id, sequence, instant, sitting, elapsed, actor, role, kind, link, subtree, canonical";

    @TempDir
    Path folder;

    private Path ledger;

    @BeforeEach
    void build() throws Exception {
        ledger = SampleLedger.build(folder, 4, 10);
    }

    private Verification verify() throws Exception {
        return LedgerVerifier.verify(VerificationRequest.of(ledger));
    }

    private Set<FaultKind> kinds() throws Exception {
        Set<FaultKind> kinds = verify().faults().stream().map(Fault::kind).collect(Collectors.toCollection(() -> EnumSet.noneOf(FaultKind.class)));
        kinds.remove(FaultKind.STORE_DAMAGED);
        return kinds;
    }

    private void attack(String... statements) throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(work -> {
                for (String sql : statements) {
                    work.run(sql);
                }
            });
        }
    }

    private void assertFound(FaultKind... kinds) throws Exception {
        Set<FaultKind> found = kinds();
        assertTrue(found.containsAll(List.of(kinds)), "found " + verify().faults());
    }

    @Test
    void nothingIsFoundInAnUntouchedLedger() throws Exception {
        Verification verification = verify();
        assertEquals(List.of(), verification.faults());
        assertTrue(verification.clean());
        assertEquals(39, verification.events());
        assertEquals(2, verification.documents());
        assertEquals(List.of(true, true, true, false), verification.tests().stream().map(VerifiedTest::sealed).toList());
        assertEquals(List.of(10L, 10L, 10L, 9L), verification.tests().stream().map(VerifiedTest::events).toList());
        assertTrue(verification.tests().stream().allMatch(VerifiedTest::clean));
        assertEquals(List.of(BenchKeyStore.publicKey(folder).orElseThrow()), verification.signers());
    }

    @Test
    void anEmptyLedgerIsClean() throws Exception {
        Path empty = folder.resolve("empty.ledger");
        SqliteLedger.open(empty).close();
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(empty)).clean());
    }

    @Test
    void handOverAfterTheSealIsClean() throws Exception {
        try (Ledger open = SqliteLedger.open(ledger)) {
            TestId first = open.tests().get(0);
            new SampleLedger(open, BenchKeyStore.openOrCreate(folder)).handOver(first, 10);
        }
        assertEquals(List.of(), verify().faults());
    }

    @Test
    void removedEvent() throws Exception {
        attack("DELETE FROM event WHERE position = 14");
        assertFound(FaultKind.POSITION_BROKEN, FaultKind.SEQUENCE_BROKEN, FaultKind.LINK_BROKEN);
    }

    @Test
    void removedEventWithPlacesClosedUp() throws Exception {
        attack("DELETE FROM event WHERE position = 14", "UPDATE event SET position = -position WHERE position > 14",
                "UPDATE event SET position = -position - 1 WHERE position < 0");
        assertFound(FaultKind.ORDER_CHANGED, FaultKind.SEQUENCE_BROKEN, FaultKind.LINK_BROKEN);
    }

    @Test
    void insertedEvent() throws Exception {
        attack("UPDATE event SET position = -position - 1 WHERE position > 14",
                "INSERT INTO event (position, " + COLUMNS + ") SELECT 15, 'T-22222-22222', 1, instant, sitting, elapsed, actor, role, kind, "
                        + "link, subtree, canonical FROM event WHERE position = 14",
                "UPDATE event SET position = -position WHERE position < 0");
        assertFound(FaultKind.COLUMN_DIFFERS, FaultKind.SEQUENCE_BROKEN, FaultKind.LINK_BROKEN, FaultKind.ORDER_CHANGED);
    }

    @Test
    void repeatedEvent() throws Exception {
        attack("INSERT INTO event (position, " + COLUMNS + ") SELECT 40, test_id, 10, instant, sitting, elapsed, actor, role, kind, link, "
                + "subtree, canonical FROM event WHERE position = 36");
        assertFound(FaultKind.COLUMN_DIFFERS, FaultKind.SEQUENCE_BROKEN, FaultKind.LINK_BROKEN, FaultKind.ORDER_CHANGED);
    }

    @Test
    void swappedEventsOfOneTest() throws Exception {
        swap(10, 14);
        assertFound(FaultKind.SEQUENCE_BROKEN, FaultKind.LINK_BROKEN, FaultKind.ORDER_CHANGED);
    }

    @Test
    void swappedEventsOfTwoTests() throws Exception {
        swap(10, 11);
        assertEquals(EnumSet.of(FaultKind.ORDER_CHANGED), kinds());
    }

    @Test
    void swappedEventsOfTwoTestsWhoseSubtreesStay() throws Exception {
        attack("CREATE TEMP TABLE kept AS SELECT position, subtree FROM event WHERE position IN (9, 11)",
                "UPDATE event SET position = -9 WHERE position = 11", "UPDATE event SET position = 11 WHERE position = 9",
                "UPDATE event SET position = 9 WHERE position = -9",
                "UPDATE event SET subtree = (SELECT subtree FROM kept WHERE kept.position = event.position) WHERE position IN (9, 11)");
        assertEquals(EnumSet.of(FaultKind.ORDER_CHANGED), kinds());
    }

    private void swap(int one, int other) throws Exception {
        attack("UPDATE event SET position = -1 WHERE position = " + one, "UPDATE event SET position = " + one + " WHERE position = " + other,
                "UPDATE event SET position = " + other + " WHERE position = -1");
    }

    @Test
    void wholeTestRemoved() throws Exception {
        attack("DELETE FROM event WHERE test_id = (SELECT test_id FROM event WHERE position = 2)");
        assertFound(FaultKind.POSITION_BROKEN);
        assertEquals(3, verify().tests().size());
    }

    @Test
    void wholeTestRemovedWithPlacesClosedUp() throws Exception {
        attack("DELETE FROM event WHERE test_id = (SELECT test_id FROM event WHERE position = 2)",
                "CREATE TEMP TABLE place AS SELECT position, row_number() OVER (ORDER BY position) AS place FROM event",
                "UPDATE event SET position = -(SELECT place FROM place WHERE place.position = event.position)",
                "UPDATE event SET position = -position");
        assertFound(FaultKind.ORDER_CHANGED);
    }

    @Test
    void wholeTestRemovedAndEverythingUnsignedReckonedAgain() throws Exception {
        attack("DELETE FROM event WHERE test_id = (SELECT test_id FROM event WHERE position = 2)",
                "CREATE TEMP TABLE place AS SELECT position, row_number() OVER (ORDER BY position) AS place FROM event",
                "UPDATE event SET position = -(SELECT place FROM place WHERE place.position = event.position)",
                "UPDATE event SET position = -position");
        Reckoning.again(ledger);
        Set<FaultKind> found = kinds();
        assertFalse(found.contains(FaultKind.ORDER_CHANGED), "the attacker reckons rightly");
        assertTrue(found.containsAll(Set.of(FaultKind.TAIL_CUT, FaultKind.CHECKPOINT_MISSING)), found.toString());
    }

    @Test
    void anEventRewrittenAndEverythingUnsignedReckonedAgain() throws Exception {
        Reckoning.rewrite(ledger, 14, "23.9", "24.1");
        Set<FaultKind> found = kinds();
        assertEquals(EnumSet.of(FaultKind.SIGNATURE_FALSE, FaultKind.CHECKPOINT_FALSE), found);
    }

    @Test
    void anEventOfTheOpenTestRewrittenAndEverythingUnsignedReckonedAgain() throws Exception {
        // Before the last checkpoint: found by the checkpoints, though the test itself is not sealed.
        Reckoning.rewrite(ledger, 16, "23.9", "24.1");
        assertEquals(EnumSet.of(FaultKind.CHECKPOINT_FALSE), kinds());
    }

    @Test
    void tailOfASealedTestCut() throws Exception {
        attack("DELETE FROM event WHERE position = 39");
        assertFound(FaultKind.TAIL_CUT);
    }

    @Test
    void tailOfASealedTestCutWithItsCheckpoint() throws Exception {
        attack("DELETE FROM event WHERE position = 38", "UPDATE event SET position = 38 WHERE position = 39",
                "DELETE FROM checkpoint WHERE number = 2", "UPDATE checkpoint SET number = 2, size = 38 WHERE number = 3");
        assertFound(FaultKind.ORDER_CHANGED, FaultKind.CHECKPOINT_FALSE);
    }

    @Test
    void checkpointRemoved() throws Exception {
        attack("DELETE FROM checkpoint WHERE number = 3");
        assertEquals(EnumSet.of(FaultKind.CHECKPOINT_MISSING), kinds());
    }

    @Test
    void signedAgainWithAnotherKey() throws Exception {
        Path stranger = Files.createDirectory(folder.resolve("stranger"));
        Path forged = SampleLedger.build(stranger, 4, 10);
        Files.copy(folder.resolve(BenchKeyStore.PUBLIC_FILE), stranger.resolve(BenchKeyStore.PUBLIC_FILE),
                StandardCopyOption.REPLACE_EXISTING);
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(forged));
        assertEquals(EnumSet.of(FaultKind.FOREIGN_KEY),
                EnumSet.copyOf(verification.faults().stream().map(Fault::kind).collect(Collectors.toSet())));
        assertEquals(4, verification.faults().size(), "the list of signers and three seals");
        Files.delete(stranger.resolve(BenchKeyStore.PUBLIC_FILE));
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(forged)).clean(), "without the key at hand it can't be known");
        assertFalse(LedgerVerifier.verify(
                VerificationRequest.of(forged).with(BenchKeyStore.publicKey(folder).orElseThrow())).clean(), "with a copy it is found");
    }

    /** The most that can be done with disk, SQL and a key of one's own: a test rewritten, everything chained and sealed anew. */
    @Test
    void reChainedAndResealedWithAnotherKey() throws Exception {
        SignedCheckpoint kept;
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            kept = new LedgerProofs(open).latest();
        }
        Path stranger = Files.createDirectory(folder.resolve("stranger"));
        Path forged = Forger.replay(ledger, stranger, BenchKeyStore.openOrCreate(stranger), "23.9", "24.1");
        Files.delete(stranger.resolve(BenchKeyStore.PUBLIC_FILE));
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(forged)).clean(), "in itself it is in order");
        Files.copy(forged, ledger, StandardCopyOption.REPLACE_EXISTING);
        assertEquals(EnumSet.of(FaultKind.FOREIGN_KEY), kinds(), "beside the bench's public key it is not");
        Set<FaultKind> againstKept = LedgerVerifier.verify(VerificationRequest.of(forged).against(List.of(kept))).faults().stream()
                .map(Fault::kind).collect(Collectors.toSet());
        assertEquals(Set.of(FaultKind.HISTORY_REWRITTEN), againstKept, "without that key, a kept checkpoint tells");
    }

    @Test
    void aByteOfASignatureOrCheckpointOrSignerChanged() throws Exception {
        byte[] untouched = Files.readAllBytes(ledger);
        for (String place : List.of("checkpoint SET signature", "checkpoint SET root", "checkpoint SET documents_link", "signer SET signature",
                "signer SET public_key")) {
            String table = place.substring(0, place.indexOf(' '));
            String column = place.substring(place.lastIndexOf(' ') + 1);
            try (Tamper tamper = Tamper.with(ledger)) {
                byte[] bytes = tamper.bytes("SELECT " + column + " FROM " + table + " WHERE number = 1");
                bytes[bytes.length - 1] ^= 1;
                tamper.behindTheTriggers(work -> work.run("UPDATE " + place + " = ? WHERE number = 1", bytes));
            }
            assertFound(table.equals("signer") ? FaultKind.SIGNER_CHANGED : FaultKind.CHECKPOINT_FALSE);
            Files.write(ledger, untouched);
        }
        assertEquals(Set.of(), kinds());
    }

    @Test
    void sealedByAKeyThatIsNotTheBenchs() throws Exception {
        BenchKey stranger = BenchKeyStore.openOrCreate(folder.resolve("stranger"));
        try (Ledger open = SqliteLedger.open(ledger)) {
            new SampleLedger(open, stranger).seal(open.tests().get(3), 9);
        }
        assertEquals(EnumSet.of(FaultKind.FOREIGN_KEY), kinds());
    }

    @Test
    void signerRemoved() throws Exception {
        attack("DELETE FROM signer");
        assertFound(FaultKind.SIGNER_CHANGED, FaultKind.CHECKPOINT_FALSE);
    }

    @Test
    void eventAfterTheSealOrUnsigned() throws Exception {
        Reckoning.appendUnsigned(ledger, 0, "observed");
        assertFound(FaultKind.AFTER_SEAL, FaultKind.SIGNATURE_MISSING);
    }

    @Test
    void amendmentAfterTheSealWithoutSignature() throws Exception {
        Reckoning.appendUnsigned(ledger, 0, "amended");
        assertEquals(EnumSet.of(FaultKind.SIGNATURE_MISSING), kinds());
    }

    @Test
    void sealWithoutSignature() throws Exception {
        Reckoning.appendUnsigned(ledger, 3, "sealed");
        assertEquals(EnumSet.of(FaultKind.SIGNATURE_MISSING), kinds());
    }

    @Test
    void namedDocumentRemoved() throws Exception {
        attack("DELETE FROM document WHERE number = 2");
        assertFound(FaultKind.DOCUMENT_MISSING);
    }

    @Test
    void documentExchanged() throws Exception {
        attack("UPDATE document SET content = CAST('procedure tarn-c16 {}' AS BLOB) WHERE number = 1");
        assertEquals(EnumSet.of(FaultKind.DOCUMENT_CHANGED), kinds());
    }

    @Test
    void attachmentBesideExchangedOrRemoved() throws Exception {
        Path beside = SampleLedger.keptBeside(ledger);
        assertTrue(verify().clean());
        byte[] content = Files.readAllBytes(beside);
        content[content.length - 1] = 1;
        Files.write(beside, content);
        assertEquals(EnumSet.of(FaultKind.DOCUMENT_CHANGED), kinds());
        Files.delete(beside);
        assertEquals(EnumSet.of(FaultKind.DOCUMENT_MISSING), kinds());
    }

    /** The same bytes, but none that a query for the text finds. */
    @Test
    void aSafeguardWhoseNameIsNoText() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA writable_schema = ON");
            tamper.run("UPDATE sqlite_master SET name = CAST(name AS BLOB) WHERE name = 'document_kept'");
            tamper.run("PRAGMA writable_schema = OFF");
        }
        assertTrue(kinds().contains(FaultKind.SAFEGUARDS_CHANGED), kinds().toString());
    }

    /** Names of that kind are kept for the planner's statistics; a schema that is written by hand can have them for anything. */
    @Test
    void aTriggerWithANameLikeStatistics() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("ANALYZE");
            assertEquals(List.of(), verify().faults());
            tamper.run("PRAGMA writable_schema = ON");
            tamper.run("INSERT INTO sqlite_master (type, name, tbl_name, rootpage, sql) VALUES ('trigger', 'sqlite_stat5', 'event', 0, "
                    + "'CREATE TRIGGER sqlite_stat5 BEFORE INSERT ON event BEGIN SELECT RAISE(IGNORE); END')");
            tamper.run("PRAGMA writable_schema = OFF");
        }
        assertEquals(EnumSet.of(FaultKind.SAFEGUARDS_CHANGED), kinds());
        assertThrows(LedgerDamagedException.class, () -> SqliteLedger.open(ledger));
    }

    @Test
    void safeguardsRemovedOrAdded() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("DROP TRIGGER event_stays").run("CREATE TRIGGER quiet AFTER INSERT ON event BEGIN SELECT 1; END");
        }
        assertEquals(EnumSet.of(FaultKind.SAFEGUARDS_CHANGED), kinds());
        assertEquals(2, verify().faults().size());
    }

    @Test
    void oneFaultNamesTestEventAndReason() throws Exception {
        attack("UPDATE event SET kind = 'confirmed' WHERE position = 14");
        Fault fault = verify().faults().get(0);
        assertEquals(verify().tests().get(1).test(), fault.test().orElseThrow());
        assertEquals(4, fault.sequence().orElseThrow());
        assertEquals(FaultKind.COLUMN_DIFFERS, fault.kind());
        assertEquals("Test " + fault.test().get() + ", event 4 (position 14): the column kind says something else than the event itself.",
                fault.words());
    }

    @Test
    void aChangedEventIsOneFaultInOneTest() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            byte[] canonical = tamper.bytes("SELECT canonical FROM event WHERE position = 14");
            canonical[canonical.length / 2] ^= 1;
            tamper.behindTheTriggers(work -> work.run("UPDATE event SET canonical = ? WHERE position = 14", canonical));
        }
        Verification verification = verify();
        assertTrue(verification.faults().stream().allMatch(fault -> fault.test().equals(verification.faults().get(0).test())));
        assertEquals(1, verification.tests().stream().filter(test -> !test.clean()).count());
    }

    @Test
    void theThirdLineSeesTheTestsThatAreInOrder() throws Exception {
        attack("UPDATE event SET kind = 'confirmed' WHERE position = 14");
        List<TestId> seen = new ArrayList<>();
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(ledger).with((test, entries) -> {
            seen.add(test);
            assertEquals(entries.size(), entries.get(entries.size() - 1).sequence());
            return seen.size() == 1 ? List.of(Fault.of(test, 3, FaultKind.DECISION_DIFFERS, "not so")) : List.of();
        }));
        assertEquals(List.of(verification.tests().get(0).test(), verification.tests().get(2).test(), verification.tests().get(3).test()), seen);
        assertEquals(List.of(false, false, true, true), verification.tests().stream().map(VerifiedTest::clean).toList());
        assertEquals("not so", verification.faults().get(verification.faults().size() - 1).words());
    }

    @Test
    void aThirdLineThatFailsIsAFaultAndTheOthersGoOn() throws Exception {
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(ledger).with((test, entries) -> {
            throw new IllegalStateException("no rule of that version");
        }));
        assertEquals(4, verification.faults().size());
        assertTrue(verification.faults().get(3).words().contains("no rule of that version"));
    }

    @Test
    void aStoppedVerificationIsNotClean() throws Exception {
        Verification stopped = LedgerVerifier.verify(VerificationRequest.of(ledger).with(Progress.none(), () -> true));
        assertFalse(stopped.complete());
        assertFalse(stopped.clean());
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(ledger).with(Progress.none(), Cancellation.never())).clean());
    }
}
