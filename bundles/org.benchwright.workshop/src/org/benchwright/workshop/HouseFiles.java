package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.Deed;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.FileEraser;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleHistory;
import org.benchwright.workshop.internal.PeopleKeys;
import org.benchwright.workshop.internal.ReceiptCodec;
import org.benchwright.workshop.internal.ReceiptHistory;

/** Photos and papers of receipts and repairs that show a person: they are withdrawn, as those of a sealed test are. */
public final class HouseFiles {

    private final Ledger books;
    private final Ledger own;
    private final Signer benchKey;
    private final PersonKeyStore keys;
    private final BenchTime time;
    private final ReceiptCodec codec = new ReceiptCodec();

    /** @param books the ledger with the books that are entered into; that of this bench, or the shared one */
    HouseFiles(Ledger books, Ledger own, Signer benchKey, PersonKeyStore keys, BenchTime time) {
        this.books = books;
        this.own = own;
        this.benchKey = benchKey;
        this.keys = keys;
        this.time = time;
    }

    /**
     * Withdraws a file. Its bytes are gone then from this bench's ledger.
     *
     * @param event number of the event of the book of receipts that named it
     * @param file  its digest
     * @param by    an auditor or a supervisor who entered nothing about a receipt or repair that shows it
     * @return the book after it
     * @throws RefusedException   if there is no such file, it was withdrawn before, the person may not, or the password is not taken
     * @throws OvertakenException if somebody else wrote in the book or in the register of people in the same moment
     */
    public ReceiptBook withdraw(long event, Digest file, String reason, SigningPerson by) throws RefusedException, OvertakenException, StoreException {
        ReceiptFact fact = codec.asKept(new ReceiptFact.AttachmentWithdrawn(event, file, reason));
        return LedgerWork.unlessOvertaken(Message.RECEIPTS_OVERTAKEN, () -> {
            PeopleHistory people = PeopleHistory.trusted(books);
            Person person = PeopleKeys.person(people.now(), by.id());
            Deed.WITHDRAW.requireRole(person.id(), person.roles());
            Actor actor = new Actor(person.id(), Deed.WITHDRAW.by().stream().filter(person::may).findFirst().orElseThrow());
            ReceiptHistory history = ReceiptHistory.trusted(books);
            Instant now = time.now().truncatedTo(ChronoUnit.MILLIS);
            // Asked before the password is, so that nobody types one in vain.
            ReceiptBook after = history.now().with(new ReceiptEvent(history.size() + 1, now, actor, fact));
            Signer signer = PeopleKeys.unlock(keys, people.now(), by);
            EntryDraft draft = new EntryDraft(TestId.RECEIPTS, now, 1, Duration.ZERO, actor, codec.kind(fact), codec.payload(fact));
            books.appendSigned(draft, history.size(), new Signing(signer, Meaning.WITHDRAWN, actor.toString(), benchKey), people.stand());
            if (own instanceof SqliteLedger bench) {
                FileEraser.erase(bench);
            }
            return after;
        });
    }

    /**
     * Ends withdrawals that were signed and then broken off, by a cut in the power perhaps, before the bytes were gone from this bench's ledger.
     *
     * @return how many files had bytes left
     */
    public int endWithdrawals() throws StoreException {
        return own instanceof SqliteLedger bench ? LedgerWork.of(() -> FileEraser.erase(bench)) : 0;
    }
}
