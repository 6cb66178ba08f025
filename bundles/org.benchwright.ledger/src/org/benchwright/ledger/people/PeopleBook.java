package org.benchwright.ledger.people;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.SignedBook;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;

/**
 * The book of people, for those who enter something in it.
 *
 * @param ledger the ledger that it is a part of
 * @param bench  the bench's own key: it signs checkpoints, and the first entries, as long as nobody has a key
 */
public record PeopleBook(Ledger ledger, Signer bench) {

    private static final String BENCH = "bench";

    public PeopleBook {
        Objects.requireNonNull(ledger);
        Objects.requireNonNull(bench);
    }

    /** What speaks against anybody's having one of these roles: asked before something is entered that they belong to. */
    public static Optional<String> objection(Collection<Role> roles) {
        return roles.stream().flatMap(role -> PeopleRules.objection(role).stream()).findFirst();
    }

    /** What speaks against beginning a register with that person: asked before there is a ledger to enter it in. */
    public static Optional<String> objectionToFirst(String id, String name, Collection<Role> roles, char[] password) {
        return PeopleRules.objectionToFirst(id, name).or(() -> objection(roles))
                .or(() -> PasswordRules.objection(password, new Person(id, name, Set.of(), List.of())));
    }

    /**
     * Enters a fact.
     *
     * @param signer who enters it: a person's key, or the bench's as long as nobody has one
     * @throws PeopleRefusedException    when the signer may not, or it does not fit
     * @throws SequenceConflictException when somebody else entered something in the same moment
     */
    public LedgerEntry enter(PeopleFact fact, Signer signer, Instant now) throws LedgerException {
        List<LedgerEntry> entries = SignedBook.read(ledger, TestId.PEOPLE);
        People people = People.of(entries);
        Optional<String> objection = new PeopleRules(people, signer.key().fingerprint(), Long.MAX_VALUE, now).objection(fact);
        if (objection.isPresent()) {
            throw new PeopleRefusedException(objection.get());
        }
        Optional<Person> holder = people.holder(signer.key().fingerprint());
        Actor actor = holder.map(person -> new Actor(person.id(), acting(person))).orElse(new Actor(BENCH, Role.BENCH));
        EntryDraft draft = new EntryDraft(TestId.PEOPLE, now, 1, Duration.ZERO, actor, PeopleCodec.kind(fact), PeopleCodec.payload(fact));
        String printed = holder.isPresent() ? actor.toString() : BENCH;
        return ledger.appendSigned(draft, entries.size(), new Signing(signer, Meaning.REGISTERED, printed, bench));
    }

    private static Role acting(Person person) {
        return person.may(Role.ADMINISTRATOR) ? Role.ADMINISTRATOR : person.roles().stream().sorted().findFirst().orElse(Role.TECHNICIAN);
    }
}
