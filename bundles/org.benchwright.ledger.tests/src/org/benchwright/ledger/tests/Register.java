package org.benchwright.ledger.tests;

import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.benchwright.core.Role;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.people.PeopleBook;
import org.benchwright.ledger.people.PeopleFact;

/** Fills the register of people; keys are made in memory, and an hour passes between two entries. */
final class Register {

    static final Instant START = Instant.parse("2026-03-02T06:00:00Z");

    private final PeopleBook book;
    private final Signer bench;
    private final Map<String, Signer> keys = new HashMap<>();
    private int hours;

    Register(Ledger ledger, Signer bench) {
        this.book = new PeopleBook(ledger, bench);
        this.bench = bench;
    }

    private Register(Register other, Ledger ledger) {
        this.book = new PeopleBook(ledger, other.bench);
        this.bench = other.bench;
        this.keys.putAll(other.keys);
        this.hours = other.hours;
    }

    /** The same people in a ledger that was opened anew. */
    Register over(Ledger ledger) {
        return new Register(this, ledger);
    }

    static Signer newKey() {
        try {
            KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
            return new BenchKey(pair.getPrivate(), SignerKey.of(pair.getPublic()));
        } catch (GeneralSecurityException missing) {
            throw new AssertionError(missing);
        }
    }

    Instant now() {
        return START.plusSeconds(3600L * hours);
    }

    /** Enters a fact; each is an hour later than the one before. */
    void enter(PeopleFact fact, Signer signer) throws LedgerException {
        hours++;
        book.enter(fact, signer, now());
    }

    /** LW makes the first administrator, with a key. */
    void begin() throws LedgerException {
        keys.put("LW", newKey());
        enter(new PeopleFact.PersonAdded("LW", "administrator LW"), bench);
        enter(new PeopleFact.RoleGranted("LW", Role.ADMINISTRATOR), bench);
        enter(new PeopleFact.KeyEnrolled("LW", keys.get("LW").key()), bench);
    }

    /** LW adds somebody, with a role and a key. */
    void add(String id, Role role) throws LedgerException {
        keys.put(id, newKey());
        enter(new PeopleFact.PersonAdded(id, id + " of Millbrook"), keys.get("LW"));
        enter(new PeopleFact.RoleGranted(id, role), keys.get("LW"));
        enter(new PeopleFact.KeyEnrolled(id, keys.get(id).key()), keys.get("LW"));
    }

    /** The key that somebody was given first. */
    Signer key(String id) {
        return keys.get(id);
    }
}
