package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.KnownBooks;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.engine.revision.RevisionEvent;
import org.benchwright.engine.revision.RevisionFact;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;

/**
 * The book of revisions as it stood at any place of the ledger. What was signed with a key that is known by then not to be trusted does not
 * count, and neither does what its signer had no right to.
 */
public final class RevisionHistory {

    private final PeopleHistory people;
    private final List<LedgerEntry> revisions;
    private final RevisionCodec codec = new RevisionCodec();
    /** By how many events of the book of people were known: after none of the revisions, after the first ..., as far as was asked for. */
    private final Map<Integer, List<RevisionBook>> books = new HashMap<>();

    private RevisionHistory(PeopleHistory people, List<LedgerEntry> revisions) {
        this.people = people;
        this.revisions = revisions;
    }

    /**
     * For work: refused when anything in the books is not as it was signed.
     *
     * @throws org.benchwright.ledger.LedgerDamagedException then
     */
    public static RevisionHistory trusted(Ledger ledger) throws LedgerException {
        return trusted(ledger, BooksRead.WHOLE);
    }

    /** As {@link #trusted(Ledger)}, for whoever has a way of their own to read books. */
    public static RevisionHistory trusted(Ledger ledger, BooksRead books) throws LedgerException {
        return new RevisionHistory(PeopleHistory.trusted(ledger, books), books.of(ledger, TestId.REVISIONS));
    }

    /** For verification, which looks at links and signatures elsewhere. */
    static RevisionHistory asFound(Ledger ledger) throws LedgerException {
        return new RevisionHistory(PeopleHistory.asFound(ledger), ledger.entries(TestId.REVISIONS));
    }

    /** How many events the book of revisions has. */
    public long size() {
        return revisions.size();
    }

    /** Where the two books stood when they were read: the basis of whatever relies on them. */
    public Map<TestId, Long> stand() {
        Map<TestId, Long> stand = new HashMap<>(people.stand());
        stand.put(TestId.REVISIONS, size());
        return Map.copyOf(stand);
    }

    /** Whether the register had been begun before that place of the ledger; from then on tests are opened by approved revisions. */
    boolean registeredBefore(long position) {
        return people.begunBefore(position);
    }

    /** The register of people at any place. */
    PeopleHistory register() {
        return people;
    }

    /** The register of people now. */
    public People people() {
        return people.now();
    }

    /** The book of revisions now. */
    public RevisionBook now() {
        return at(Long.MAX_VALUE);
    }

    /** How far the books stood before that place of the ledger. */
    KnownBooks standing(long position) {
        return new KnownBooks(people.before(position), PeopleHistory.before(revisions, position));
    }

    /** The book of revisions as it was known before that place of the ledger. */
    RevisionBook at(long position) {
        return at(standing(position));
    }

    /** The book of revisions as it was known when both books had come so far. */
    RevisionBook at(KnownBooks standing) {
        int known = (int) Math.min(standing.people(), people.size());
        int signed = (int) Math.min(standing.revisions(), revisions.size());
        List<RevisionBook> grown = books.computeIfAbsent(known, none -> new ArrayList<>(List.of(RevisionBook.empty())));
        while (grown.size() <= signed) {
            int before = grown.size() - 1;
            grown.add(with(grown.get(before), revisions.get(before), people.register(known)));
        }
        return grown.get(signed);
    }

    private RevisionBook with(RevisionBook book, LedgerEntry entry, People known) {
        try {
            Optional<RevisionEvent> event = event(entry, known);
            return event.isPresent() ? book.with(event.get()) : book;
        } catch (RefusedException | UndecodableException e) {
            // It counts for nothing; verification says so.
            return book;
        }
    }

    /** What is wrong in the book of revisions, each event judged by what was known when it was signed. */
    List<Objection> objections() {
        List<Objection> objections = new ArrayList<>();
        RevisionBook book = RevisionBook.empty();
        for (LedgerEntry entry : revisions) {
            try {
                Optional<RevisionEvent> event = event(entry, people.at(entry.position()));
                if (event.isPresent()) {
                    book = book.with(event.get());
                } else {
                    objections.add(new Objection(entry.sequence(), Message.FAULT_NOBODY.text()));
                }
            } catch (RefusedException | UndecodableException e) {
                objections.add(new Objection(entry.sequence(), Message.FAULT_OF_KIND.text(entry.kind(), e.getMessage())));
            }
        }
        return objections;
    }

    private Optional<RevisionEvent> event(LedgerEntry entry, People known) throws RefusedException, UndecodableException {
        Optional<Person> signer = people.signer(entry, known);
        if (signer.isEmpty()) {
            return Optional.empty();
        }
        RevisionFact fact = codec.fact(entry.kind(), entry.payload());
        PeopleHistory.requireSaid(entry, signer.get(), meaning(fact));
        if (!signer.get().may(entry.actor().role())) {
            throw new RefusedException(Message.FAULT_ROLE_THEN.text(signer.get().id(), entry.actor().role().label()));
        }
        return Optional.of(new RevisionEvent(entry.sequence(), entry.instant(), signer.get().id(), Set.of(entry.actor().role()), fact));
    }

    /** What a signature under such a fact means. */
    public static Meaning meaning(RevisionFact fact) {
        if (fact instanceof RevisionFact.Prepared) {
            return Meaning.PREPARED;
        } else if (fact instanceof RevisionFact.Approved) {
            return Meaning.APPROVED;
        }
        return fact instanceof RevisionFact.Withdrawn ? Meaning.WITHDRAWN : Meaning.DECIDED;
    }
}
