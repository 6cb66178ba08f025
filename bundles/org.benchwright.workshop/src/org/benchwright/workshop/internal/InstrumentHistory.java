package org.benchwright.workshop.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.InstrumentBook;
import org.benchwright.engine.instrument.InstrumentEvent;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.Person;

/** The register of instruments out of the ledger. */
public final class InstrumentHistory {

    private final PeopleHistory people;
    private final List<LedgerEntry> entries;
    private final InstrumentCodec codec = new InstrumentCodec();
    private final Map<Long, Instrument> said = new HashMap<>();
    private final List<Objection> objections = new ArrayList<>();
    private final InstrumentBook now;

    private InstrumentHistory(PeopleHistory people, List<LedgerEntry> entries) {
        this.people = people;
        this.entries = entries;
        InstrumentBook book = InstrumentBook.empty();
        for (LedgerEntry entry : entries) {
            book = with(book, entry);
        }
        this.now = book;
    }

    private InstrumentBook with(InstrumentBook book, LedgerEntry entry) {
        try {
            InstrumentEvent event = event(entry);
            InstrumentBook next = book.with(event);
            said.put(event.number(), next.find(event.fact().asset()).orElseThrow());
            return next;
        } catch (RefusedException | UndecodableException e) {
            objections.add(new Objection(entry.sequence(), Message.FAULT_OF_KIND.text(entry.kind(), e.getMessage())));
            return book;
        }
    }

    private InstrumentEvent event(LedgerEntry entry) throws RefusedException, UndecodableException {
        Optional<Person> signer = people.signer(entry, people.at(entry.position()));
        if (signer.isPresent()) {
            PeopleHistory.requireSaid(entry, signer.get(), Meaning.REGISTERED);
        } else {
            PeopleHistory.requireMeaning(entry, Meaning.REGISTERED);
        }
        // In which role it is entered is a role that the signer has, and that may.
        Set<Role> roles = signer.filter(person -> person.may(entry.actor().role())).map(person -> Set.of(entry.actor().role())).orElse(Set.of());
        boolean bench = !people.at(entry.position()).anyKeys();
        return new InstrumentEvent(entry.sequence(), entry.instant(), signer.map(Person::id), roles, bench, codec.fact(entry.kind(), entry.payload()));
    }

    /**
     * For work: refused when the book is not as it was signed.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException then
     */
    public static InstrumentHistory trusted(Ledger ledger) throws LedgerException {
        return trusted(ledger, BooksRead.WHOLE);
    }

    /** As {@link #trusted(Ledger)}, for whoever has a way of their own to read books. */
    public static InstrumentHistory trusted(Ledger ledger, BooksRead books) throws LedgerException {
        return new InstrumentHistory(PeopleHistory.trusted(ledger, books), books.of(ledger, TestId.INSTRUMENTS));
    }

    /** For verification, which looks at links and signatures elsewhere. */
    static InstrumentHistory asFound(Ledger ledger) throws LedgerException {
        return new InstrumentHistory(PeopleHistory.asFound(ledger), ledger.entries(TestId.INSTRUMENTS));
    }

    /** How many events the book has. */
    public long size() {
        return entries.size();
    }

    /** The register of people that its signers are in. */
    public PeopleHistory people() {
        return people;
    }

    /** The book now. */
    public InstrumentBook now() {
        return now;
    }

    /** What does not hold in it. */
    List<Objection> objections() {
        return List.copyOf(objections);
    }

    /** What a test writes down of an instrument. */
    public static Observation.RegisterEntry entry(Instrument i) {
        return new Observation.RegisterEntry(i.statement(), i.title(), i.serial(), i.ranges(), i.certificate(), i.calibrated(), i.custody(),
                i.retired());
    }

    /**
     * What is wrong with an instrument that a test names with its entry: it must be what the book said before.
     *
     * @param position place of the event in the ledger
     */
    Optional<String> objection(Observation.InstrumentNamed named, long position) {
        Observation.RegisterEntry entry = named.entry().orElseThrow();
        Optional<Instrument> instrument = Optional.ofNullable(said.get(entry.statement()))
                .filter(found -> entries.get((int) entry.statement() - 1).position() < position);
        boolean told = instrument.filter(found -> found.asset().equals(named.asset()) && found.due().equals(named.due()) && entry(found).equals(entry))
                .isPresent();
        return told ? Optional.empty() : Optional.of(Message.FAULT_OTHER_INSTRUMENT.text(named.asset()));
    }

    /**
     * Whether the register had an instrument of that number before a place of the ledger.
     *
     * @param moment how long before it the instrument may not have been seen there yet
     */
    boolean had(String asset, LedgerEntry at, Duration moment) {
        Optional<String> number = now.find(asset).map(Instrument::asset);
        return number.isPresent() && said.values().stream().filter(each -> each.asset().equals(number.get()))
                .map(each -> entries.get((int) each.statement() - 1))
                .anyMatch(entry -> entry.position() < at.position() && !entry.instant().plus(moment).isAfter(at.instant()));
    }

    /** Whether nothing else had been said of it by then: an older entry may have promised more. */
    boolean newest(Observation.InstrumentNamed named, long position) {
        long statement = named.entry().orElseThrow().statement();
        return said.values().stream().noneMatch(other -> other.asset().equals(named.asset()) && other.statement() > statement
                && entries.get((int) other.statement() - 1).position() < position);
    }
}
