package org.benchwright.ledger.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchwright.ledger.LedgerDamagedException;

/**
 * The files that SQLite looks for beside a database. It opens them without asking what they are: in one that is none it may wait for ever, and a
 * journal of an unfinished change puts the database back as the journal says, but only for whoever may write.
 */
final class SideFiles {

    private static final String JOURNAL = "-journal";
    private static final List<String> SUFFIXES = List.of("-wal", "-shm", JOURNAL);
    /** Where the first page tells which program the file belongs to: SQLite's file format, 1.3. */
    private static final int APPLICATION_AT = 68;
    private static final int HEAD = APPLICATION_AT + Integer.BYTES;

    private SideFiles() {
    }

    /**
     * Looks at what lies beside a ledger.
     *
     * @throws LedgerDamagedException if SQLite would wait in something, or if readers would be shown another ledger than writers
     */
    static void requireHarmless(Path ledger) throws LedgerDamagedException {
        if (hasOdd(ledger)) {
            throw new LedgerDamagedException(Messages.text("besideOdd", ledger, ledger.getFileName()));
        }
        Path journal = beside(ledger, JOURNAL);
        try {
            if (Files.exists(journal) && begins(journal) && isLedger(ledger)) {
                throw new LedgerDamagedException(Messages.text("besideJournal", ledger, journal.getFileName()));
            }
        } catch (IOException unreadable) {
            throw new LedgerDamagedException(Messages.text("besideJournal", ledger, journal.getFileName()), unreadable);
        }
    }

    /** Whether something lies there that is no ordinary file. */
    static boolean hasOdd(Path database) {
        return SUFFIXES.stream().map(suffix -> beside(database, suffix)).anyMatch(file -> Files.exists(file) && !Files.isRegularFile(file));
    }

    /** A journal that is done with is empty, or begins with nought. */
    private static boolean begins(Path journal) throws IOException {
        try (InputStream content = Files.newInputStream(journal)) {
            return content.read() > 0;
        }
    }

    /** Whether it is one already. Ledgers have no journal, they have a log; a file that is only about to become one may. */
    private static boolean isLedger(Path file) throws IOException {
        if (!Files.exists(file)) {
            return false;
        }
        try (InputStream content = Files.newInputStream(file)) {
            byte[] head = content.readNBytes(HEAD);
            return head.length == HEAD && ByteBuffer.wrap(head).getInt(APPLICATION_AT) == Schema.APPLICATION;
        }
    }

    private static Path beside(Path database, String suffix) {
        return database.resolveSibling(database.getFileName() + suffix);
    }
}
