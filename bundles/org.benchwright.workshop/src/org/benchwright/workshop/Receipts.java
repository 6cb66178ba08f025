package org.benchwright.workshop;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.Repair;
import org.benchwright.engine.receipt.ReplacedPart;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.internal.FileKeeper;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.ReceiptCodec;
import org.benchwright.workshop.internal.ReceiptHistory;
import org.benchwright.workshop.internal.TestsOfUnit;

/** Units that come in, and what is mended in them. The bench signs it, as it signs what technicians do in a test. */
public final class Receipts {

    /** Several stations may receive at once: as often it is tried again before the other one is said to be faster. */
    private static final int TRIES = 20;

    private final Ledger ledger;
    private final Signer benchKey;
    private final Station station;
    private final BenchTime time;
    private final LedgerMemory memory;
    private final ReceiptCodec codec = new ReceiptCodec();

    Receipts(Ledger ledger, Signer benchKey, Station station, BenchTime time, LedgerMemory memory) {
        this.memory = memory;
        this.ledger = ledger;
        this.benchKey = benchKey;
        this.station = station;
        this.time = time;
    }

    /**
     * All receipts and repairs.
     *
     * @throws StoreException if the ledger can't be read, or the book is not as it was signed
     */
    public ReceiptBook book() throws StoreException {
        return LedgerWork.of(() -> memory.receipts(ledger).now());
    }

    /**
     * Receives a unit.
     *
     * @param unit how it came in; which test went before is looked up
     * @throws RefusedException   if it does not fit
     * @throws OvertakenException if other stations wrote again and again in the same moment
     */
    public Receipt receive(ReceiptFact.Received unit, Actor by)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        Optional<String> earlier = new TestsOfUnit(ledger).last(unit.unit());
        ReceiptFact fact = new ReceiptFact.Received(unit.order(), unit.owner(), unit.unit(), unit.plate(), unit.family(), unit.complaint(),
                unit.damage(), unit.preserve(), unit.files(), earlier);
        Entered entered = enter(fact, by);
        return entered.book().receipt(entered.number()).orElseThrow();
    }

    /** Says anew how a unit came in. Which test went before stays as it was found then. */
    public Receipt correct(long receipt, String reason, ReceiptFact.Received to, Actor by)
            throws RefusedException, OvertakenException, StoreException {
        Optional<String> earlier = book().receipt(receipt).flatMap(before -> before.said().earlier());
        ReceiptFact.Received all = new ReceiptFact.Received(to.order(), to.owner(), to.unit(), to.plate(), to.family(), to.complaint(),
                to.damage(), to.preserve(), to.files(), earlier);
        return enter(new ReceiptFact.Corrected(receipt, reason, all), by).book().receipt(receipt).orElseThrow();
    }

    /** A unit leaves the house without a test that lets it go. */
    public Receipt giveBack(long receipt, String reason, Actor by) throws RefusedException, OvertakenException, StoreException {
        return enter(new ReceiptFact.GivenBack(receipt, reason), by).book().receipt(receipt).orElseThrow();
    }

    /**
     * Writes down what was replaced or mended after a test that the unit did not pass.
     *
     * @param test the test; it is the unit's last
     * @throws RefusedException if the test is not over, passed the unit, is a rehearsal, or was followed by another test already
     */
    public Repair repaired(String test, String what, List<ReplacedPart> parts, List<KeptFile> files, Actor by)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        TestId id = TestId.parse(test).orElseThrow(() -> new RefusedException(Message.RETURN_NO_TEST.text(test)));
        TestsOfUnit tests = new TestsOfUnit(ledger);
        String unit = tests.requireMendable(id);
        Entered entered = enter(new ReceiptFact.Repaired(unit, id.value(), what, parts, files), by);
        List<Repair> repairs = entered.book().repairsAfter(id.value());
        return repairs.get(repairs.size() - 1);
    }

    /**
     * Keeps a file, to be named in what is entered.
     *
     * @throws RefusedException if it can't be read or is too large
     */
    public KeptFile keep(Path file) throws RefusedException, StoreException {
        return new KeptFile(new FileKeeper(ledger).keep(file), String.valueOf(file.getFileName()));
    }

    private record Entered(ReceiptBook book, long number) {
    }

    private Entered enter(ReceiptFact fact, Actor by) throws RefusedException, OvertakenException, StoreException {
        ReceiptFact kept = codec.asKept(fact);
        for (int attempt = 1;; attempt++) {
            try {
                return append(kept, by);
            } catch (SequenceConflictException conflict) {
                if (attempt == TRIES) {
                    throw new OvertakenException(Message.RECEIPTS_OVERTAKEN.text(), conflict);
                }
            } catch (LedgerException failure) {
                throw LedgerWork.failed(failure);
            }
        }
    }

    private Entered append(ReceiptFact fact, Actor by) throws RefusedException, LedgerException {
        ReceiptHistory history = memory.receipts(ledger);
        Instant now = time.now().truncatedTo(ChronoUnit.MILLIS);
        long number = history.size() + 1;
        ReceiptBook book = history.now().with(new ReceiptEvent(number, now, by, fact));
        EntryDraft draft = new EntryDraft(TestId.RECEIPTS, now, 1, Duration.ZERO, by, codec.kind(fact), codec.payload(fact));
        ledger.appendSigned(draft, history.size(), new Signing(benchKey, ReceiptHistory.meaning(fact), station.name()));
        return new Entered(book, number);
    }
}
