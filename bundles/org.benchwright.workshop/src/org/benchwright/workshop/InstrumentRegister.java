package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.InstrumentBook;
import org.benchwright.engine.instrument.InstrumentEvent;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.InstrumentCodec;
import org.benchwright.workshop.internal.InstrumentHistory;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleKeys;

/** The register of instruments: signed by the bench as long as nobody has a key, then by an engineer or a supervisor. */
public final class InstrumentRegister {

    private final Ledger ledger;
    private final Signer benchKey;
    private final PersonKeyStore keys;
    private final BenchTime time;
    private final InstrumentCodec codec = new InstrumentCodec();

    InstrumentRegister(Ledger ledger, Signer benchKey, PersonKeyStore keys, BenchTime time) {
        this.ledger = ledger;
        this.benchKey = benchKey;
        this.keys = keys;
        this.time = time;
    }

    /**
     * Signs something about an instrument.
     *
     * @param by who; empty for the bench
     * @return the instrument after it
     * @throws RefusedException   if the person may not, the password is not taken, or the fact does not fit
     * @throws OvertakenException if somebody else signed something in the same moment
     */
    public Instrument sign(InstrumentFact told, Optional<SigningPerson> by) throws RefusedException, OvertakenException, StoreException {
        InstrumentHistory history = history();
        People people = history.people().now();
        InstrumentFact fact = codec.asKept(told);
        Optional<Person> person = by.isPresent() ? Optional.of(PeopleKeys.person(people, by.get().id())) : Optional.empty();
        Instant now = time.now().truncatedTo(ChronoUnit.MILLIS);
        // Asked before the password is, so that nobody types one in vain.
        InstrumentBook after = history.now().with(new InstrumentEvent(history.size() + 1, now, person.map(Person::id),
                person.map(Person::roles).orElse(Set.of()), !people.anyKeys(), fact));
        Signer signer = by.isPresent() ? PeopleKeys.unlock(keys, people, by.get()) : benchKey;
        Actor actor = person.map(who -> new Actor(who.id(), who.may(Role.ENGINEER) ? Role.ENGINEER : Role.SUPERVISOR)).orElse(Sitting.BENCH);
        EntryDraft draft = new EntryDraft(TestId.INSTRUMENTS, now, 1, Duration.ZERO, actor, codec.kind(fact), codec.payload(fact));
        Signing signing = new Signing(signer, Meaning.REGISTERED, person.isPresent() ? actor.toString() : actor.id(), benchKey);
        LedgerWork.unlessOvertaken(Message.INSTRUMENTS_OVERTAKEN,
                () -> ledger.appendSigned(draft, history.size(), signing, history.people().stand()));
        return after.find(fact.asset()).orElseThrow();
    }

    private InstrumentHistory history() throws StoreException {
        return LedgerWork.of(() -> InstrumentHistory.trusted(ledger));
    }
}
