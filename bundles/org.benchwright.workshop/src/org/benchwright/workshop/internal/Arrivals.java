package org.benchwright.workshop.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.LongPredicate;

import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Mended;
import org.benchwright.engine.event.RepairDone;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.Repair;

/** What the book of receipts tells a test of its unit; written into the test's first event, and compared with the book when it is verified. */
public final class Arrivals {

    private Arrivals() {
    }

    /** How a unit came in. */
    public static Arrival of(Receipt receipt) {
        return of(receipt, receipt.statement(), receipt.said());
    }

    private static Arrival of(Receipt receipt, long statement, ReceiptFact.Received said) {
        return new Arrival(receipt.number(), statement, receipt.instant(), said.order(), said.owner(), said.plate(), said.complaint(),
                said.damage(), said.preserve());
    }

    /** What was mended since a test; empty if nothing was. */
    public static Optional<Mended> mended(ReceiptBook book, String test) {
        List<RepairDone> repairs = book.repairsAfter(test).stream().map(Arrivals::done).toList();
        return repairs.isEmpty() ? Optional.empty() : Optional.of(new Mended(repairs));
    }

    private static RepairDone done(Repair repair) {
        return new RepairDone(repair.number(), repair.instant(), repair.by().id(), repair.said().what(), repair.said().parts());
    }

    /**
     * Whether a test's first event tells what the book told before it. A statement that was corrected meanwhile was true when it was copied.
     *
     * @param book   the book, as it stands now: what was told once stays in it
     * @param before whether it had an event, by its number, before the test was opened
     */
    static Optional<String> objection(ReceiptBook book, LongPredicate before, Fact.Opened opened) {
        boolean late = opened.receipt().filter(arrival -> !before.test(arrival.statement())).isPresent();
        if (late || opened.receipt().isPresent() && !told(book, opened.serial(), opened.receipt().get())) {
            return Optional.of(Message.FAULT_OTHER_RECEIPT.text(Receipt.name(opened.receipt().get().receipt())));
        }
        boolean mended = opened.mended().stream().flatMap(all -> all.repairs().stream()).allMatch(done -> before.test(done.event()) && book.repairs().stream()
                .anyMatch(repair -> done(repair).equals(done) && opened.predecessor().equals(Optional.of(repair.said().test()))));
        return mended ? Optional.empty() : Optional.of(Message.FAULT_OTHER_REPAIR.text());
    }

    /**
     * Whether a test's first event tells what the book told last of its unit, and of repairs after the test before.
     *
     * @param books what the bench may have known, the newest first
     */
    static Optional<String> omission(List<ReceiptBook> books, Fact.Opened opened) {
        if (books.stream().anyMatch(book -> receipt(book, opened).equals(opened.receipt()) && mended(book, opened).equals(opened.mended()))) {
            return Optional.empty();
        }
        Optional<Arrival> last = receipt(books.get(0), opened);
        if (last.equals(opened.receipt())) {
            return Optional.of(Message.FAULT_NO_REPAIR.text(opened.predecessor().orElse("")));
        }
        return Optional.of(last.map(arrival -> Message.FAULT_NO_RECEIPT.text(Receipt.name(arrival.receipt())))
                .orElseGet(() -> Message.FAULT_OTHER_RECEIPT.text(Receipt.name(opened.receipt().orElseThrow().receipt()))));
    }

    private static Optional<Arrival> receipt(ReceiptBook book, Fact.Opened opened) {
        return book.current(opened.serial()).map(Arrivals::of);
    }

    private static Optional<Mended> mended(ReceiptBook book, Fact.Opened opened) {
        return opened.predecessor().flatMap(test -> mended(book, test));
    }

    private static boolean told(ReceiptBook book, String unit, Arrival arrival) {
        Optional<ReceiptBook.Statement> statement = book.statement(arrival.statement()).filter(found -> found.receipt() == arrival.receipt());
        Optional<Receipt> receipt = book.receipt(arrival.receipt());
        return statement.isPresent() && receipt.isPresent() && statement.get().said().unit().equals(unit)
                && of(receipt.get(), arrival.statement(), statement.get().said()).equals(arrival);
    }
}
