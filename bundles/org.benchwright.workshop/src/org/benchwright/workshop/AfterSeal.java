package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.record.Deed;
import org.benchwright.engine.record.RecordEvent;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleHistory;
import org.benchwright.workshop.internal.PeopleKeys;
import org.benchwright.workshop.internal.RecordFacts;
import org.benchwright.workshop.internal.SealedRecords;
import org.benchwright.workshop.internal.SignedNotes;

/** What people sign about records after their seal: decisions, amendments, reviews, hand-overs and the ends of records. */
public final class AfterSeal {

    private final Ledger ledger;
    private final Signer benchKey;
    private final PersonKeyStore keys;
    private final BenchTime time;
    private final Elsewhere elsewhere;
    private final KeptTests kept = new KeptTests();
    private final RecordFacts codec = new RecordFacts();

    /** Where tests of other benches are found. */
    interface Elsewhere {
        /** The ledger that benches share; empty where this bench shares none. */
        Optional<Ledger> ledger() throws StoreException;
    }

    AfterSeal(Ledger ledger, Signer benchKey, PersonKeyStore keys, BenchTime time, Elsewhere elsewhere) {
        this.elsewhere = elsewhere;
        this.ledger = ledger;
        this.benchKey = benchKey;
        this.keys = keys;
        this.time = time;
    }

    /**
     * Signs something about a sealed test. The bytes of an attachment that is withdrawn are gone then from this ledger.
     *
     * @param test its id
     * @param fact what
     * @param by   who
     * @return the record after it
     * @throws RefusedException      if there is no such test, it is not sealed, it does not take the fact as it stands, the person may not, or
     *                               the password is not taken
     * @throws OvertakenException    if somebody else wrote to the test or the register of people in the same moment
     * @throws FaultyRecordException if the test's record cannot be what happened
     */
    public TestRecord sign(String test, RecordFact fact, SigningPerson by)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        TestId id = id(test);
        try {
            // Asked before the password is tried.
            Taken taken = taken(id, fact, by.id());
            Signer signer = PeopleKeys.unlock(keys, taken.people().now(), by);
            Actor actor = new Actor(taken.person().id(), role(taken.fact(), taken.person()));
            EntryDraft draft = new EntryDraft(id, taken.now(), taken.after().run().lastMoment().sitting() + 1, Duration.ZERO, actor,
                    codec.kind(taken.fact()), codec.payload(taken.fact()));
            ledger.appendSigned(draft, taken.last(), new Signing(signer, SealedRecords.meaning(taken.fact()), actor.toString(), benchKey),
                    taken.people().stand());
            if (taken.fact() instanceof RecordFact.AttachmentWithdrawn withdrawn && ledger instanceof SqliteLedger own) {
                own.erase(id, withdrawn.attachment());
            }
            return taken.after();
        } catch (SequenceConflictException conflict) {
            throw new OvertakenException(Message.OVERTAKEN.text(test), conflict);
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }

    /**
     * Asked before anybody types a password, see {@link #sign}.
     *
     * @param person who would sign
     * @throws RefusedException if it will not be signed, whatever is typed
     */
    public void require(String test, RecordFact fact, String person) throws RefusedException, StoreException, FaultyRecordException {
        try {
            PeopleKeys.key(taken(id(test), fact, person).people().now(), person);
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }

    private static TestId id(String test) throws RefusedException {
        return TestId.parse(test).filter(TestId::isTest).orElseThrow(() -> new RefusedException(Message.RETURN_NO_TEST.text(test)));
    }

    /**
     * A fact that a record takes.
     *
     * @param fact   as it is kept
     * @param last   number of the last event before it
     * @param after  the record after it
     * @param people the register by which the person may
     * @param now    when it was asked
     */
    private record Taken(RecordFact fact, long last, TestRecord after, PeopleHistory people, Person person, Instant now) {
    }

    private Taken taken(TestId id, RecordFact fact, String by) throws RefusedException, LedgerException, StoreException, FaultyRecordException {
        long last = ledger.lastSequence(id);
        if (last == 0) {
            throw new RefusedException(Message.RETURN_NO_TEST.text(id.value()));
        }
        TestRecord record = kept.read(ledger, id).record().orElseThrow(() -> new RefusedException(Message.RECORD_OPEN.text(id.value())));
        PeopleHistory people = PeopleHistory.trusted(ledger);
        Person person = PeopleKeys.person(people.now(), by);
        Instant now = time.now().truncatedTo(ChronoUnit.MILLIS);
        RecordFact asKept = codec.asKept(fact);
        TestRecord after = record.with(new RecordEvent(last + 1, now, person.id(), person.roles(), asKept));
        kept.requireOther(whereItIs(asKept), record.run(), asKept);
        requireTrusted(id, asKept);
        return new Taken(asKept, last, after, people, person, now);
    }

    /**
     * Ends a withdrawal that was signed and then broken off, by a cut in the power perhaps, before the bytes were gone from this ledger.
     *
     * @param test  its id
     * @param event number of the event that attached what was withdrawn
     * @return whether bytes were left; not so if nothing of the kind was withdrawn
     * @throws FaultyRecordException if the test's record cannot be what happened
     */
    public boolean endWithdrawal(String test, long event) throws StoreException, FaultyRecordException {
        Optional<TestId> id = TestId.parse(test).filter(TestId::isTest);
        return LedgerWork.of(() -> id.isPresent() && ledger.lastSequence(id.get()) > 0 && ledger instanceof SqliteLedger own
                && erase(own, id.get(), attachment -> attachment.event() == event) > 0);
    }

    /**
     * Ends all withdrawals from tests that were signed and then broken off, as {@link #endWithdrawal} does. A record that cannot be what happened takes
     * nothing away.
     *
     * @return how many attachments had bytes left
     */
    public int endWithdrawals() throws StoreException {
        return LedgerWork.of(() -> {
            int erased = 0;
            for (TestId test : ledger instanceof SqliteLedger ? ledger.tests() : List.<TestId>of()) {
                if (!ledger.entries(test, EventKinds.ATTACHMENT_WITHDRAWN).isEmpty()) {
                    erased += eraseIfSound((SqliteLedger) ledger, test);
                }
            }
            return erased;
        });
    }

    private int eraseIfSound(SqliteLedger own, TestId test) throws LedgerException, StoreException {
        try {
            return erase(own, test, any -> true);
        } catch (FaultyRecordException faulty) {
            // Verification tells what is wrong with it.
            return 0;
        }
    }

    /** How many of the attachments had bytes left though they were withdrawn. */
    private int erase(SqliteLedger own, TestId test, Predicate<TestRecord.Attachment> which) throws LedgerException, StoreException, FaultyRecordException {
        int erased = 0;
        for (TestRecord record : kept.read(own, test).record().stream().toList()) {
            for (TestRecord.Attachment attachment : record.attachments()) {
                if (which.test(attachment) && record.withdrawn(attachment.event()).isPresent() && own.holdsBytes(attachment.digest())) {
                    own.erase(test, attachment.digest());
                    erased++;
                }
            }
        }
        return erased;
    }

    /** The ledger with the test that takes the place of this one: that of this bench, or the shared one. */
    private Ledger whereItIs(RecordFact fact) throws LedgerException, StoreException {
        Optional<TestId> other = fact instanceof RecordFact.Superseded superseded ? TestId.parse(superseded.by()).filter(TestId::isTest) : Optional.empty();
        return other.isEmpty() || ledger.lastSequence(other.get()) > 0 ? ledger : elsewhere.ledger().orElse(ledger);
    }

    /** A unit doesn't go out by what a lost key may have signed. */
    private void requireTrusted(TestId test, RecordFact fact) throws RefusedException, LedgerException {
        Optional<SignedNote> lost = fact instanceof RecordFact.HandedOver
                ? new SignedNotes().of(ledger, test).stream().filter(note -> !note.trusted()).findFirst() : Optional.empty();
        if (lost.isPresent()) {
            throw new RefusedException(Message.NOT_TRUSTED.text(String.valueOf(lost.get().sequence()), lost.get().by()));
        }
    }

    private static Role role(RecordFact fact, Person person) {
        return Deed.of(fact).by().stream().filter(person::may).findFirst().orElseThrow();
    }
}
