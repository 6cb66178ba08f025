package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.SignedNote;

/** What was signed after a test's seal. */
public final class SignedNotes {

    private final RecordFacts facts = new RecordFacts();
    private final ReturnCodec returns = new ReturnCodec();

    /** All of a test, in order. */
    public List<SignedNote> of(Ledger ledger, TestId test) throws LedgerException {
        List<SignedNote> notes = new ArrayList<>();
        PeopleHistory people = PeopleHistory.asFound(ledger);
        for (LedgerEntry entry : ledger.entries(test)) {
            Optional<EntrySignature> signed = EventKinds.AFTER_SEAL.contains(entry.kind()) ? EntrySignature.in(entry) : Optional.empty();
            signed.ifPresent(by -> notes.add(new SignedNote(entry.sequence(), entry.instant(), entry.kind(), by.printedName(), words(entry),
                    trusted(entry, people))));
        }
        return List.copyOf(notes);
    }

    /** A return is signed by the bench; all else by people, whose keys may have been revoked since. */
    private boolean trusted(LedgerEntry entry, PeopleHistory people) {
        return !facts.knows(entry.kind()) || people.signer(entry, people.now()).isPresent();
    }

    private String words(LedgerEntry entry) {
        try {
            if (entry.kind().equals(EventKinds.RETURNED)) {
                return returns.read(entry.payload()).words();
            }
            return facts.fact(entry.kind(), entry.payload()).words();
        } catch (UndecodableException e) {
            throw new IllegalStateException("a test is read only after its events were", e);
        }
    }
}
