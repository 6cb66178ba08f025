package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKey;

/** The register of people as it stood at any place of the ledger. */
public final class PeopleHistory {

    private final List<LedgerEntry> entries;
    /** After none of the events, after the first, after two ..., as far as was asked for. */
    private final List<People> registers = new ArrayList<>(List.of(People.none()));

    private PeopleHistory(List<LedgerEntry> entries) {
        this.entries = entries;
    }

    /**
     * For work: refused when anything in the book is not as it was signed.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException then
     */
    public static PeopleHistory trusted(Ledger ledger) throws LedgerException {
        return trusted(ledger, BooksRead.WHOLE);
    }

    /** As {@link #trusted(Ledger)}, for whoever has a way of their own to read books. */
    public static PeopleHistory trusted(Ledger ledger, BooksRead books) throws LedgerException {
        return new PeopleHistory(books.of(ledger, TestId.PEOPLE));
    }

    /** For verification, which looks at links and signatures elsewhere. */
    static PeopleHistory asFound(Ledger ledger) throws LedgerException {
        return new PeopleHistory(ledger.entries(TestId.PEOPLE));
    }

    /** How many events the book has. */
    long size() {
        return entries.size();
    }

    /** Where the book stood when it was read: the basis of whatever relies on it. */
    public Map<TestId, Long> stand() {
        return Map.of(TestId.PEOPLE, size());
    }

    /** Whether the register had been begun before that place of the ledger. */
    boolean begunBefore(long position) {
        return !entries.isEmpty() && entries.get(0).position() < position;
    }

    /** The register now. */
    public People now() {
        return register(entries.size());
    }

    /** The register as its first events make it; asked by any thread. */
    synchronized People register(int count) {
        while (registers.size() <= count) {
            int known = registers.size() - 1;
            registers.add(registers.get(known).with(entries.get(known)));
        }
        return registers.get(count);
    }

    /** How many events it had before that place of the ledger. */
    int before(long position) {
        return before(entries, position);
    }

    /** The register before that place of the ledger. */
    People at(long position) {
        return register(before(position));
    }

    /**
     * Who has signed an entry, with the roles that this person had then; empty where nobody did whose key was good.
     *
     * @param known what is known about keys: the register of then, or of a later time in which one may have been revoked
     */
    Optional<Person> signer(LedgerEntry entry, People known) {
        Optional<EntrySignature> signature = EntrySignature.in(entry);
        // In a ledger that benches share, an event is judged by what its bench knew when it was signed; that more stands here is told elsewhere.
        int then = (int) Math.min(signature.map(EntrySignature::register).orElse(OptionalLong.empty()).orElse(entries.size()), before(entry.position()));
        Optional<PersonKey> key = signature.flatMap(found -> known.key(found.fingerprint()))
                .filter(found -> found.signs(entry.position(), entry.instant()) || signedUnknowing(found, then, entry));
        return key.flatMap(found -> known.holder(signature.get().fingerprint())).flatMap(holder -> register(then).person(holder.id()));
    }

    /**
     * Who signed an entry with a key of their own, meaning that; the entry is in their name.
     *
     * @throws RefusedException if nobody did whose key was good then, or it means something else
     */
    Person signer(LedgerEntry entry, Meaning meaning) throws RefusedException {
        Person signer = signer(entry, at(entry.position())).orElseThrow(() -> new RefusedException(Message.FAULT_NOBODY.text()));
        requireSaid(entry, signer, meaning);
        return signer;
    }

    /**
     * An entry is in the name of its signer, in print too, and its signature means that.
     *
     * @throws RefusedException if it is not
     */
    static void requireSaid(LedgerEntry entry, Person signer, Meaning meaning) throws RefusedException {
        if (!signer.id().equals(entry.actor().id())) {
            throw new RefusedException(Message.FAULT_OTHER_SIGNER.text(entry.actor().id(), signer.id()));
        }
        require(otherMeaning(entry, meaning));
        require(otherInPrint(entry, entry.actor()));
    }

    /**
     * The signature of an entry means that, whoever's it is.
     *
     * @throws RefusedException if it means something else
     */
    static void requireMeaning(LedgerEntry entry, Meaning meaning) throws RefusedException {
        require(otherMeaning(entry, meaning));
    }

    private static void require(Optional<String> wrong) throws RefusedException {
        if (wrong.isPresent()) {
            throw new RefusedException(wrong.get());
        }
    }

    /** Whose key signed an entry, by the register as it stood there, good or not; empty where it was no person's, and so a bench's. */
    Optional<Person> holder(LedgerEntry entry) {
        return EntrySignature.in(entry).flatMap(signature -> at(entry.position()).holder(signature.fingerprint()));
    }

    /** What is wrong with an entry that a technician tells and the bench signs. */
    Optional<String> notByTheBench(LedgerEntry entry) {
        Optional<Person> holder = holder(entry);
        return entry.actor().role() == Role.TECHNICIAN && holder.isEmpty() ? Optional.empty()
                : Optional.of(Message.FAULT_NOT_BY_BENCH.text(entry.actor().toString(), holder.map(Person::id).orElse(Role.BENCH.word())));
    }

    /** What is wrong with a signature that has to mean that. */
    static Optional<String> otherMeaning(LedgerEntry entry, Meaning meaning) {
        return EntrySignature.in(entry).filter(signature -> signature.meaning() == meaning).isPresent() ? Optional.empty()
                : Optional.of(Message.FAULT_MEANING.text(meaning.word()));
    }

    /** What is wrong with the printed name of a signature that is by that person. */
    static Optional<String> otherInPrint(LedgerEntry entry, Actor by) {
        return EntrySignature.in(entry).filter(signature -> !signature.prints(by))
                .map(signature -> Message.FAULT_PRINTED.text(signature.printedName(), by.toString()));
    }

    private boolean signedUnknowing(PersonKey key, int then, LedgerEntry entry) {
        return then > 0 && then < before(entry.position()) && key.signedUnknowing(entries.get(then - 1).position(), entry.instant());
    }

    /** How many of these entries stand before that place of the ledger. */
    static int before(List<LedgerEntry> entries, long position) {
        int low = 0;
        int high = entries.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (entries.get(middle).position() < position) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
