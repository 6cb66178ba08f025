package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.internal.TypeNames;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A ledger as format 2 was written, with people, revisions, receipts and what is signed after a seal: whatever comes later has to read it, to
 * verify all three lines of it, and to come to the same decisions.
 */
class GoldenRecordsTest {

    private static final long EVENTS = 988;
    private static final String ROOT = "cbf25f5374c64d564a9b4d8d30ef215fcc3e91606bf56c064b8f47d7c356474a";

    private static final List<String> VERDICTS = List.of("REJECTED", "ACCEPTED", "ACCEPTED", "ACCEPTED", "ACCEPTED", "UNDECIDED", "REJECTED", "ACCEPTED",
            "ACCEPTED", "ACCEPTED", "ACCEPTED", "rehearsal", "open");
    @TempDir
    private Path folder;
    private Path ledger;

    @BeforeEach
    void copy() throws Exception {
        ledger = folder.resolve("bench.ledger");
        take("format-2.ledger", ledger);
        take("format-2.pub", folder.resolve(BenchKeyStore.PUBLIC_FILE));
        byte[] attachment = new byte[GoldenMaker.ATTACHMENT];
        String hex = Digest.of(attachment).hex();
        Path place = Files.createDirectories(folder.resolve("attachments").resolve(hex.substring(0, 2)));
        Files.write(place.resolve(hex.substring(2)), attachment);
    }

    private static void take(String name, Path to) throws Exception {
        try (InputStream file = GoldenRecordsTest.class.getResourceAsStream("golden/" + name)) {
            Files.copy(file, to);
        }
    }

    @Test
    void verifiesInAllThreeLinesAsOnTheDayItWasWritten() throws Exception {
        LedgerReport report = BenchLedger.verify(ledger);
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        assertEquals(List.of(), report.decisions());
        assertEquals(List.of(), report.late());
        assertTrue(report.sound());
        assertEquals(EVENTS, report.events());
        assertEquals(VERDICTS.size(), report.tests());
        assertEquals(VERDICTS.size(), report.derived());
        assertEquals(2, report.withdrawn().size(), "of a test and of a receipt");
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            assertEquals(ROOT, open.checkpoints().get(open.checkpoints().size() - 1).root().hex());
        }
    }

    @Test
    void holdsAnEventOfEveryKindAndAllItsBooks() throws Exception {
        Set<String> kinds = new TreeSet<>();
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            open.scan(1, entry -> kinds.add(entry.kind()), Cancellation.never());
            for (TestId book : TestId.BOOKS) {
                assertTrue(open.lastSequence(book) > 0, book.value());
            }
        }
        assertTrue(kinds.containsAll(List.of("person-added", "role-granted", "role-ended", "key-enrolled", "key-rotated", "key-revoked", "authorised",
                "authorisation-ended", "sealed", "returned")), kinds.toString());
        Set<String> pinned = new TreeSet<>();
        Stream.of(TypeNames.events(), TypeNames.revisions(), TypeNames.records(), TypeNames.receipts(), TypeNames.instruments())
                .forEach(names -> pinned.addAll(names.table().keySet()));
        pinned.removeAll(kinds);
        assertEquals(Set.of(), pinned, "later formats' kinds are not in it");
    }

    @Test
    void comesToTheSameDecisions() throws Exception {
        try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
            List<String> verdicts = new ArrayList<>();
            for (String id : open.tests()) {
                KeptTest test = open.test(id).orElseThrow();
                verdicts.add(test.run().rehearsal() ? "rehearsal" : test.run().verdict().map(Object::toString).orElse("open"));
            }
            assertEquals(VERDICTS, verdicts);
        }
    }
}
