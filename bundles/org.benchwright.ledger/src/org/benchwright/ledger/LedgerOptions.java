package org.benchwright.ledger;

import java.time.Duration;
import java.util.OptionalLong;

/**
 * How a ledger is opened.
 *
 * @param patience  how long to wait while another program writes
 * @param mostPages most pages of 4096 bytes that the file may grow to; empty: as many as the disk takes
 */
public record LedgerOptions(Duration patience, OptionalLong mostPages) {

    /** Ten seconds of patience, no bound. */
    public static LedgerOptions standard() {
        return new LedgerOptions(Duration.ofSeconds(10), OptionalLong.empty());
    }

    /** These options with another patience. */
    public LedgerOptions withPatience(Duration other) {
        return new LedgerOptions(other, mostPages);
    }

    /** These options with a bound for the file. */
    public LedgerOptions withMostPages(long pages) {
        return new LedgerOptions(patience, OptionalLong.of(pages));
    }
}
