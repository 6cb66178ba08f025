package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Year;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerMissingException;
import org.benchwright.ledger.LedgerPlaceTakenException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.NoProofException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.YearArchive;
import org.benchwright.ledger.people.KeyProtection;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Copies of a ledger, back from copies, and the archive of a year. */
class LedgerBackupTest {

    private static final byte[] PHOTO = new byte[300 << 10];

    @TempDir
    Path folder;

    private Path ledger;
    private Digest photo;

    @BeforeEach
    void build() throws Exception {
        new Random(1).nextBytes(PHOTO);
        Path bench = folder.resolve("bench");
        ledger = SampleLedger.build(bench, 3, 6);
        try (Ledger open = SqliteLedger.open(ledger)) {
            photo = open.keep(PHOTO, DocumentKind.ATTACHMENT);
            SampleLedger sample = new SampleLedger(open, BenchKeyStore.openOrCreate(bench), 8);
            TestId test = sample.newTest();
            open.append(test, 0, List.of(sample.draft(test, "attached", "{\"file\":\"" + DocumentReference.of(photo) + "\"}")));
            sample.seal(test, 1);
        }
    }

    private SignedCheckpoint latest() throws Exception {
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            return new LedgerProofs(open).latest();
        }
    }

    private static List<String> list(Path place) throws Exception {
        try (Stream<Path> files = Files.list(place)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aBackupIsTheWholeLedgerAndVerifiesAgainstItsCheckpoint() throws Exception {
        Path backup = folder.resolve("backup");
        Path copy = LedgerBackup.write(ledger, backup, false);
        assertEquals(List.of("attachments", "bench-key.pub", "bench.ledger", "checkpoint.json"), list(backup));
        SignedCheckpoint checkpoint = SignedCheckpoint.read(Files.readString(backup.resolve(LedgerBackup.CHECKPOINT)));
        assertEquals(latest(), checkpoint);
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(copy).against(List.of(checkpoint)));
        assertTrue(verification.clean(), verification.faults().toString());
        assertEquals(LedgerVerifier.verify(VerificationRequest.of(ledger)).events(), verification.events());
        try (Ledger open = SqliteLedger.openReadOnly(copy)) {
            assertArrayEquals(PHOTO, open.document(photo).orElseThrow());
        }
    }

    @Test
    void nothingIsOverwrittenAndNothingHalfIsLeft() throws Exception {
        Path there = Files.writeString(folder.resolve("backup"), "mine");
        assertThrows(LedgerPlaceTakenException.class, () -> LedgerBackup.write(ledger, there, false));
        assertEquals("mine", Files.readString(there));
        assertThrows(LedgerMissingException.class, () -> LedgerBackup.write(folder.resolve("no.ledger"), folder.resolve("second"), false));
        assertEquals(List.of("backup", "bench"), list(folder));
    }

    @Test
    void aBackupWhileOthersWriteIsOneMomentOfTheLedger() throws Exception {
        AtomicBoolean stop = new AtomicBoolean();
        ExecutorService writer = Executors.newSingleThreadExecutor();
        try {
            Future<Long> written = writer.submit(() -> {
                long rounds = 0;
                try (Ledger open = SqliteLedger.open(ledger)) {
                    SampleLedger sample = new SampleLedger(open, BenchKeyStore.openOrCreate(ledger.getParent()), 99);
                    while (!stop.get()) {
                        sample.carryOut(2, 4);
                        rounds++;
                    }
                }
                return rounds;
            });
            for (int i = 0; i < 5; i++) {
                Path copy = LedgerBackup.write(ledger, folder.resolve("backup" + i), false);
                assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(copy)).faults());
            }
            stop.set(true);
            assertTrue(written.get() > 0);
        } finally {
            stop.set(true);
            writer.shutdownNow();
        }
    }

    @Test
    void workGoesOnInWhatWasRestoredWithItsKeys() throws Exception {
        Path backup = folder.resolve("backup");
        LedgerBackup.write(ledger, backup, true);
        Path restored = folder.resolve("new").resolve("bench.ledger");
        LedgerBackup.restore(backup, restored);
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(restored).against(List.of(latest()))).clean());
        try (Ledger open = SqliteLedger.open(restored)) {
            new SampleLedger(open, BenchKeyStore.openOrCreate(restored.getParent()), 5).carryOut(2, 4);
            assertArrayEquals(PHOTO, open.document(photo).orElseThrow());
        }
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(restored)).faults());
    }

    @Test
    void keysAreInABackupOnlyWhenAskedForAndStayTheirOwnersAlone() throws Exception {
        Path bench = ledger.getParent();
        Person person = new Person("RB", "engineer RB", Set.of(Role.ENGINEER), List.of());
        new PersonKeyStore(bench, new KeyProtection(10), Clock.systemUTC()).create(person, "four wet otters".toCharArray());
        LedgerBackup.write(ledger, folder.resolve("without"), false);
        assertEquals(List.of("attachments", "bench-key.pub", "bench.ledger", "checkpoint.json"), list(folder.resolve("without")));
        Path with = folder.resolve("with");
        LedgerBackup.write(ledger, with, true);
        Path restored = folder.resolve("restored");
        LedgerBackup.restore(with, restored.resolve("bench.ledger"));
        String key = "people/" + list(bench.resolve("people")).get(0);
        for (String secret : List.of("bench-key.pem", key)) {
            for (Path copy : List.of(with, restored)) {
                assertArrayEquals(Files.readAllBytes(bench.resolve(secret)), Files.readAllBytes(copy.resolve(secret)));
                Path file = copy.resolve(secret);
                assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)), file.toString());
            }
        }
    }

    @Test
    void aRestoredOlderCopySaysWhatLacksAgainstAKeptCheckpoint() throws Exception {
        Path backup = folder.resolve("backup");
        LedgerBackup.write(ledger, backup, true);
        try (Ledger open = SqliteLedger.open(ledger)) {
            new SampleLedger(open, BenchKeyStore.openOrCreate(ledger.getParent()), 5).carryOut(2, 4);
        }
        Path restored = Files.createDirectory(folder.resolve("empty")).resolve("bench.ledger");
        LedgerBackup.restore(backup, restored);
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(restored).against(List.of(latest())));
        assertEquals(List.of(FaultKind.OLDER_COPY), verification.faults().stream().map(fault -> fault.kind()).toList());
        assertTrue(verification.faults().get(0).words().contains("tells of 26 events, and there are 19"), verification.faults().toString());
    }

    @Test
    void aLedgerIsRestoredIntoAnEmptyPlaceOnly() throws Exception {
        Path backup = folder.resolve("backup");
        LedgerBackup.write(ledger, backup, true);
        Verification before = LedgerVerifier.verify(VerificationRequest.of(ledger));
        assertThrows(LedgerPlaceTakenException.class, () -> LedgerBackup.restore(backup, ledger));
        assertEquals(before, LedgerVerifier.verify(VerificationRequest.of(ledger)));
        assertThrows(LedgerMissingException.class, () -> LedgerBackup.restore(folder.resolve("nowhere"),
                folder.resolve("x").resolve("bench.ledger")));
        assertFalse(Files.exists(folder.resolve("x")));
    }

    @Test
    void anAttachmentThatLacksIsNamedWhenTheBackupIsVerified() throws Exception {
        Files.delete(SampleLedger.beside(ledger, photo));
        Path copy = LedgerBackup.write(ledger, folder.resolve("backup"), false);
        assertEquals(List.of(FaultKind.DOCUMENT_MISSING),
                LedgerVerifier.verify(VerificationRequest.of(copy)).faults().stream().map(fault -> fault.kind()).toList());
    }

    // ---- archive

    @Test
    void anArchiveHoldsTheSealedTestsOfAYearAndIsCheckedAlone() throws Exception {
        Path file = folder.resolve("2026.archive");
        YearArchive.Content content;
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            content = YearArchive.write(open, Year.of(2026), file);
        }
        assertEquals(List.of(), content.faults());
        assertEquals(3, content.tests(), "the open test is not in it");
        assertEquals(14, content.events());
        assertEquals(3, content.documents());
        assertEquals(latest(), content.checkpoint());
        Files.delete(ledger);
        assertEquals(content, YearArchive.check(file));
    }

    @Test
    void anotherYearIsEmptyButForTheCheckpoint() throws Exception {
        Path file = folder.resolve("2027.archive");
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            assertEquals(0, YearArchive.write(open, Year.of(2027), file).tests());
            assertThrows(LedgerPlaceTakenException.class, () -> YearArchive.write(open, Year.of(2026), file));
        }
        assertEquals(0, YearArchive.check(file).tests());
    }

    @Test
    void withoutASignatureThereIsNoArchive() throws Exception {
        Path file = folder.resolve("2026.archive");
        try (Ledger open = SqliteLedger.open(folder.resolve("fresh").resolve("bench.ledger"))) {
            assertThrows(NoProofException.class, () -> YearArchive.write(open, Year.of(2026), file));
        }
        assertEquals(List.of("bench", "fresh"), list(folder));
    }

    @Test
    void whateverIsChangedInAnArchiveIsFound() throws Exception {
        Path file = folder.resolve("2026.archive");
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            YearArchive.write(open, Year.of(2026), file);
        }
        Map<String, byte[]> entries = new HashMap<>();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : zip.stream().toList()) {
                entries.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
            }
        }
        Random random = new Random(3);
        for (String name : entries.keySet()) {
            for (int i = 0; i < 25; i++) {
                byte[] changed = entries.get(name).clone();
                changed[random.nextInt(changed.length)] ^= (byte) (1 << random.nextInt(8));
                assertNotSound(file, with(entries, name, changed), name);
            }
            assertNotSound(file, with(entries, name, null), name.startsWith("chains/") ? "" : name);
        }
        assertNotSound(file, with(entries, "stranger", new byte[3]), "stranger");
        assertThrows(LedgerFormatException.class, () -> YearArchive.check(Files.write(folder.resolve("no.archive"), new byte[20])));
    }

    /** No program writes two entries of one name, but a file may have them, and readers differ in which they take. */
    @Test
    void whatIsInAnArchiveTwiceIsFound() throws Exception {
        Path file = folder.resolve("2026.archive");
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            YearArchive.write(open, Year.of(2026), file);
        }
        String name = "documents/" + photo.hex();
        String placeholder = "documents/" + "x".repeat(64);
        ByteArrayOutputStream more = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(Files.newInputStream(file)); ZipOutputStream out = new ZipOutputStream(more)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(entry.getName()));
                in.transferTo(out);
            }
            out.putNextEntry(new ZipEntry(placeholder));
            out.write(PHOTO);
        }
        String bytes = more.toString(StandardCharsets.ISO_8859_1).replace(placeholder, name);
        Path twice = Files.writeString(folder.resolve("twice.archive"), bytes, StandardCharsets.ISO_8859_1);
        assertEquals(List.of(name + " is in the archive twice."), YearArchive.check(twice).faults());
    }

    private static Map<String, byte[]> with(Map<String, byte[]> entries, String name, byte[] content) {
        Map<String, byte[]> changed = new TreeMap<>(entries);
        if (content == null) {
            changed.remove(name);
        } else {
            changed.put(name, content);
        }
        return changed;
    }

    @Test
    void anArchiveWithANameThatIsNoTextCannotBeRead() throws Exception {
        byte[] local = new byte[32];
        System.arraycopy(new byte[] {'P', 'K', 3, 4, 20, 0, 0, 8}, 0, local, 0, 8);
        local[26] = 2;
        local[30] = (byte) 0xff;
        local[31] = (byte) 0xfe;
        Path archive = Files.write(folder.resolve("odd.zip"), local);
        assertThrows(LedgerException.class, () -> YearArchive.check(archive));
    }

    @Test
    void nothingIsRestoredIntoTheRootOfAFileSystem() throws Exception {
        LedgerBackup.write(ledger, folder.resolve("whole"), false);
        assertThrows(LedgerPlaceTakenException.class, () -> LedgerBackup.restore(folder.resolve("whole"), folder.getRoot()));
    }

    private void assertNotSound(Path archive, Map<String, byte[]> entries, String what) throws Exception {
        Path file = folder.resolve("changed.archive");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            // The checkpoint first, as it was written.
            List<String> order = Stream.concat(Stream.of("checkpoint.json"),
                    entries.keySet().stream().filter(name -> !name.equals("checkpoint.json")))
                    .filter(entries::containsKey).toList();
            for (String name : order) {
                out.putNextEntry(new ZipEntry(name));
                out.write(entries.get(name));
                out.closeEntry();
            }
        }
        if (what.isEmpty()) {
            // A whole test that is left out: the archive says how many it holds, and the ledger how many there are.
            assertEquals(YearArchive.check(archive).tests() - 1, YearArchive.check(file).tests());
            return;
        }
        try {
            assertFalse(YearArchive.check(file).faults().isEmpty(), what);
        } catch (LedgerFormatException noArchive) {
            assertEquals("checkpoint.json", what);
        }
    }
}
