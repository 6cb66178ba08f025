package org.benchwright.ledger.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.VerificationRequest;

/**
 * Changes a ledger at random, one change at a time, and verifies it against a kept checkpoint. Each change is either found, or makes the
 * file unreadable, or is shown to have no effect: all tables, triggers and attachments read as before.
 */
final class MutationCampaign {

    private static final int ATTACHMENT = 300 << 10;

    private final Path ledger;
    private final Path attachment;
    private final byte[] untouchedLedger;
    private final byte[] untouchedAttachment;
    private final String untouchedContent;
    private final SignedCheckpoint kept;

    /** What became of a change. */
    enum Fate {
        /** Verification names a fault. */
        FOUND,
        /** It can't be read as a ledger any more. */
        UNREADABLE,
        /** Everything that can be read is as before. */
        WITHOUT_EFFECT,
        /** It reads otherwise and verifies clean. */
        MISSED,
        /** The verifier failed. */
        CRASHED
    }

    /**
     * How a campaign went.
     *
     * @param fates  how many changes had which fate
     * @param misses the changes that were missed or made the verifier crash
     */
    record Outcome(Map<Fate, Integer> fates, List<String> misses) {
    }

    private MutationCampaign(Path ledger, Path attachment, SignedCheckpoint kept) throws Exception {
        this.ledger = ledger;
        this.attachment = attachment;
        this.kept = kept;
        this.untouchedLedger = Files.readAllBytes(ledger);
        this.untouchedAttachment = Files.readAllBytes(attachment);
        this.untouchedContent = LedgerContent.of(ledger, attachment);
    }

    /** Prepares a ledger in an empty folder. */
    static MutationCampaign in(Path folder) throws Exception {
        Path ledger = folder.resolve("bench.ledger");
        Path beside;
        SignedCheckpoint kept;
        try (Ledger open = SqliteLedger.open(ledger)) {
            byte[] photo = new byte[ATTACHMENT];
            new Random(1).nextBytes(photo);
            beside = SampleLedger.beside(ledger, open.keep(photo, DocumentKind.ATTACHMENT));
            new SampleLedger(open, BenchKeyStore.openOrCreate(folder)).carryOut(3, 6);
            kept = new LedgerProofs(open).latest();
        }
        return new MutationCampaign(ledger, beside, kept);
    }

    /** Carries out {@code count} changes that follow from {@code seed}. */
    Outcome run(long seed, int count) throws Exception {
        Map<Fate, Integer> fates = new EnumMap<>(Fate.class);
        List<String> misses = new ArrayList<>();
        for (int number = 0; number < count; number++) {
            restore();
            Random random = new Random(seed * 1_000_003 + number);
            String deed = change(random);
            Fate fate = fate();
            fates.merge(fate, 1, Integer::sum);
            if (fate == Fate.MISSED || fate == Fate.CRASHED) {
                misses.add("seed " + seed + ", change " + number + ": " + fate + ": " + deed);
            }
        }
        restore();
        return new Outcome(fates, misses);
    }

    private void restore() throws IOException {
        for (String suffix : List.of("-wal", "-shm", "-journal")) {
            Files.deleteIfExists(ledger.resolveSibling(ledger.getFileName() + suffix));
        }
        Files.write(ledger, untouchedLedger);
        Files.write(attachment, untouchedAttachment);
    }

    private String change(Random random) throws Exception {
        int kind = random.nextInt(20);
        if (kind < 6) {
            return RandomChange.ofBytes(random, ledger);
        }
        return kind == 6 ? RandomChange.ofBytes(random, attachment) : RandomChange.ofTables(random, ledger);
    }

    private Fate fate() throws Exception {
        boolean clean;
        try {
            clean = LedgerVerifier.verify(VerificationRequest.of(ledger).against(List.of(kept))).clean();
        } catch (LedgerException cannotRead) {
            return Fate.UNREADABLE;
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError crash) {
            return Fate.CRASHED;
        }
        if (!clean) {
            return Fate.FOUND;
        }
        return LedgerContent.of(ledger, attachment).equals(untouchedContent) ? Fate.WITHOUT_EFFECT : Fate.MISSED;
    }
}
