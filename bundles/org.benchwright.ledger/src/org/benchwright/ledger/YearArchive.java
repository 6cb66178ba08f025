package org.benchwright.ledger;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Year;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.BackupFile;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.References;
import org.benchwright.ledger.internal.WholeFile;

/**
 * The tests that were sealed in one year, with the books and documents that they name, in one file that can be checked without the ledger: each
 * test is a proof that all its events stand under the ledger's checkpoint. Nothing is taken out of the ledger.
 */
public final class YearArchive {

    private static final String CHECKPOINT = "checkpoint.json";
    private static final String CHAINS = "chains/";
    private static final String DOCUMENTS = "documents/";
    private static final int LONGEST = 256 << 20;

    private YearArchive() {
    }

    /**
     * What is in an archive.
     *
     * @param tests      how many tests
     * @param events     events of those tests and of the books
     * @param documents  how many documents
     * @param checkpoint the checkpoint under which all of it stands
     * @param faults     what is wrong, in words
     */
    public record Content(long tests, long events, long documents, SignedCheckpoint checkpoint, List<String> faults) {

        public Content {
            faults = List.copyOf(faults);
        }
    }

    /**
     * Writes an archive, and checks it.
     *
     * @param year by the instant of the seal, UTC
     * @param file must not be there
     * @throws NoProofException          when nothing was signed yet
     * @throws LedgerPlaceTakenException when something is there
     * @throws LedgerDamagedException    when the ledger does not lead to its own checkpoint
     */
    public static Content write(Ledger ledger, Year year, Path file) throws LedgerException {
        return WholeFile.write(file, part -> {
            try (ZipOutputStream out = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(part)))) {
                fill(ledger, year, out);
            }
            return read(part);
        });
    }

    private static void fill(Ledger ledger, Year year, ZipOutputStream out) throws IOException, LedgerException {
        Filling filling = new Filling(ledger, out);
        for (TestId book : TestId.BOOKS) {
            if (ledger.lastSequence(book) > 0) {
                filling.chain(book);
            }
        }
        for (TestId test : ledger.tests()) {
            if (ledger.sealed(test) && isOf(ledger.entries(test), year)) {
                filling.chain(test);
            }
        }
    }

    private static boolean isOf(List<LedgerEntry> entries, Year year) {
        return entries.stream().filter(entry -> entry.kind().equals(EventKinds.SEALED))
                .anyMatch(entry -> entry.instant().atOffset(ZoneOffset.UTC).getYear() == year.getValue());
    }

    /** One archive as it is written: each chain and each document once. */
    private static final class Filling {

        private final Ledger ledger;
        private final ZipOutputStream out;
        private final LedgerProofs proofs;
        private final SignedCheckpoint checkpoint;
        private final Set<TestId> chains = new HashSet<>();
        private final Set<Digest> kept = new HashSet<>();

        Filling(Ledger ledger, ZipOutputStream out) throws IOException, LedgerException {
            this.ledger = ledger;
            this.out = out;
            this.proofs = new LedgerProofs(ledger);
            this.checkpoint = proofs.latest();
            put(out, CHECKPOINT, checkpoint.text().getBytes(StandardCharsets.UTF_8));
        }

        void chain(TestId test) throws IOException, LedgerException {
            if (!chains.add(test)) {
                return;
            }
            InclusionProof proof = proofs.inclusion(test, OptionalLong.empty(), true, checkpoint);
            put(out, CHAINS + test + ".json", proof.text().getBytes(StandardCharsets.UTF_8));
            for (LedgerEntry entry : ledger.entries(test)) {
                for (Digest digest : References.in(entry.payload())) {
                    if (entry.sequence() <= proof.sequence() && kept.add(digest)) {
                        document(test, digest);
                    }
                }
            }
        }

        /** Where it was withdrawn, the chain that says so goes along, whatever year it is of: without it a document would lack. */
        private void document(TestId test, Digest digest) throws IOException, LedgerException {
            Optional<byte[]> content = ledger.document(digest);
            if (content.isPresent()) {
                put(out, DOCUMENTS + digest.hex(), content.get());
            } else {
                chain(withdrawnBy(test, digest).orElseThrow(() -> new LedgerDamagedException(Messages.text("damagedDocument", test, digest))));
            }
        }

        private Optional<TestId> withdrawnBy(TestId named, Digest digest) throws LedgerException {
            for (TestId each : List.of(named, TestId.RECEIPTS)) {
                if (withdrew(each, digest)) {
                    return Optional.of(each);
                }
            }
            for (TestId each : ledger.tests()) {
                if (withdrew(each, digest)) {
                    return Optional.of(each);
                }
            }
            return Optional.empty();
        }

        private boolean withdrew(TestId chain, Digest digest) throws LedgerException {
            for (LedgerEntry entry : ledger.entries(chain, EventKinds.ATTACHMENT_WITHDRAWN)) {
                if (References.in(entry.payload()).contains(digest)) {
                    return true;
                }
            }
            return false;
        }
    }

    private static void put(ZipOutputStream out, String name, byte[] content) throws IOException {
        out.putNextEntry(new ZipEntry(name));
        out.write(content);
        out.closeEntry();
    }

    // ---- checking

    /**
     * Checks an archive by itself: every chain leads from its beginning to the checkpoint, the checkpoint's key signed it, every document that is
     * named is there and is what was named. Whose key that is has to be compared with a note of its fingerprint.
     *
     * @throws LedgerException when it can't be read, or is no archive
     */
    public static Content check(Path file) throws LedgerException {
        try {
            return read(file);
        } catch (IOException failure) {
            throw BackupFile.translated(failure, file);
        }
    }

    private static Content read(Path file) throws IOException, LedgerException {
        Check check = new Check();
        try (ZipInputStream in = new ZipInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                check.look(entry.getName(), bounded(in));
            }
        } catch (IllegalArgumentException malformed) {
            // A name that is no text.
            throw new IOException(String.valueOf(malformed.getMessage()), malformed);
        }
        return check.content(file);
    }

    private static byte[] bounded(InputStream in) throws IOException {
        byte[] content = in.readNBytes(LONGEST + 1);
        if (content.length > LONGEST) {
            throw new IOException("an entry of more than " + LONGEST + " bytes");
        }
        return content;
    }

    private static final class Check {

        private final List<String> faults = new ArrayList<>();
        private final Set<String> names = new HashSet<>();
        private final Set<Digest> named = new HashSet<>();
        private final Set<Digest> withdrawn = new HashSet<>();
        private final Set<Digest> there = new HashSet<>();
        private final List<SignedCheckpoint> checkpoints = new ArrayList<>();
        private long tests;
        private long events;

        void look(String name, byte[] content) {
            if (!names.add(name)) {
                faults.add(Messages.text("archive.twice", name));
            }
            try {
                String text = new String(content, StandardCharsets.UTF_8);
                if (name.equals(CHECKPOINT)) {
                    checkpoints.add(0, SignedCheckpoint.read(text));
                } else if (name.startsWith(CHAINS)) {
                    chain(name, InclusionProof.read(text));
                } else if (name.startsWith(DOCUMENTS)) {
                    Digest digest = Digest.of(content);
                    if (!name.equals(DOCUMENTS + digest.hex())) {
                        faults.add(Messages.text("archive.document", name));
                    }
                    there.add(digest);
                } else {
                    faults.add(Messages.text("archive.stranger", name));
                }
            } catch (ProofFormatException | PayloadException malformed) {
                faults.add(Messages.text("archive.unreadable", name, malformed.getMessage()));
            }
        }

        private void chain(String name, InclusionProof proof) throws PayloadException {
            boolean whole = proof.earlier().size() == proof.sequence() - 1;
            boolean same = !checkpoints.isEmpty() && checkpoints.get(0).text().equals(proof.checkpoint().text());
            if (!proof.holds() || !whole || !same || !name.equals(CHAINS + proof.test() + ".json")) {
                faults.add(Messages.text("archive.chain", name));
            }
            tests += proof.test().isTest() ? 1 : 0;
            events += proof.sequence();
            for (String event : proof.earlier()) {
                names(event);
            }
            names(proof.event());
        }

        private void names(String event) throws PayloadException {
            boolean withdraws = CanonicalJson.parse(event).text("kind").equals(Optional.of(EventKinds.ATTACHMENT_WITHDRAWN));
            (withdraws ? withdrawn : named).addAll(References.in(event));
        }

        Content content(Path file) throws LedgerFormatException {
            if (checkpoints.isEmpty()) {
                throw new LedgerFormatException(Messages.text("archive.none", file));
            }
            if (!checkpoints.get(0).holds()) {
                faults.add(Messages.text("fault.keptFalse", checkpoints.get(0).checkpoint().number()));
            }
            named.stream().filter(digest -> !there.contains(digest) && !withdrawn.contains(digest))
                    .forEach(digest -> faults.add(Messages.text("archive.lacks", digest)));
            return new Content(tests, events, there.size(), checkpoints.get(0), faults);
        }
    }
}
