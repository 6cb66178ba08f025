package org.benchwright.ledger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.SignaturePart;
import org.benchwright.ledger.internal.Statements;

/** A book of the ledger as work relies on it: read only when every link and every signature in it is true. */
public final class SignedBook {

    private SignedBook() {
    }

    /**
     * All events of a book, in order. Whether their signers were allowed to is another question.
     *
     * @throws LedgerDamagedException when a link or a signature is false
     */
    public static List<LedgerEntry> read(Ledger ledger, TestId book) throws LedgerException {
        return sound(ledger.entries(book), book, ledger.signers(), true);
    }

    /**
     * As {@link #read}, for a book that grows with every unit: all links are looked at and the last signature, which covers every event
     * before it. What an earlier signer vouched for is looked at by verification.
     *
     * @throws LedgerDamagedException when a link or the last signature is false
     */
    public static List<LedgerEntry> readCovered(Ledger ledger, TestId book) throws LedgerException {
        return sound(ledger.entries(book), book, ledger.signers(), false);
    }

    /**
     * As {@link #read}, where the beginning of the book was read before: only what came since is read and looked at. The last event that is
     * known must be there still, with its link: that stands for all before it.
     *
     * @param before what was read before, by this method or that one
     * @throws LedgerDamagedException when the book does not go on from there, or a link or a signature is false
     */
    public static List<LedgerEntry> readOn(Ledger ledger, TestId book, List<LedgerEntry> before) throws LedgerException {
        return before.isEmpty() ? read(ledger, book) : goneOn(ledger, book, before, true);
    }

    /** As {@link #readOn}, for a book of which {@link #readCovered} looks at the last signature. */
    public static List<LedgerEntry> readCoveredOn(Ledger ledger, TestId book, List<LedgerEntry> before) throws LedgerException {
        return before.isEmpty() ? readCovered(ledger, book) : goneOn(ledger, book, before, false);
    }

    private static List<LedgerEntry> goneOn(Ledger ledger, TestId book, List<LedgerEntry> before, boolean everySignature) throws LedgerException {
        LedgerEntry known = before.get(before.size() - 1);
        List<LedgerEntry> found = ledger.entries(book, known.sequence());
        if (found.isEmpty() || found.get(0).position() != known.position() || !found.get(0).link().equals(known.link())) {
            throw new LedgerDamagedException(Messages.text("bookFalse", book, known.sequence()));
        }
        if (found.size() == 1) {
            return before;
        }
        List<LedgerEntry> newer = found.subList(1, found.size());
        follow(newer, new After(book, known.sequence(), known.link()), ledger.signers(), everySignature);
        List<LedgerEntry> all = new ArrayList<>(before);
        all.addAll(newer);
        return List.copyOf(all);
    }

    static List<LedgerEntry> sound(List<LedgerEntry> entries, TestId book, List<KnownSigner> signers, boolean everySignature)
            throws LedgerException {
        follow(entries, new After(book, 0, Link.before(book)), signers, everySignature);
        return entries;
    }

    /** The place in a book from which entries go on. */
    private record After(TestId book, long sequence, Link link) {
    }

    private static void follow(List<LedgerEntry> entries, After after, List<KnownSigner> signers, boolean everySignature) throws LedgerException {
        Map<String, SignerKey> keys = new HashMap<>();
        signers.forEach(signer -> keys.put(signer.key().fingerprint().hex(), signer.key()));
        Link link = after.link();
        for (int i = 0; i < entries.size(); i++) {
            LedgerEntry entry = entries.get(i);
            Link next = link.next(entry.canonical());
            boolean looked = everySignature || i == entries.size() - 1;
            if (entry.sequence() != after.sequence() + i + 1 || !next.equals(entry.link()) || looked && !signed(entry, link, keys)) {
                throw new LedgerDamagedException(Messages.text("bookFalse", after.book(), entry.sequence()));
            }
            link = next;
        }
    }

    /** Whether the event is signed, and its signature is true of the events up to the one with the link {@code before}. */
    static boolean signed(LedgerEntry entry, Link before, Map<String, SignerKey> keys) throws PayloadException {
        Members payload = CanonicalJson.parse(entry.payload());
        Optional<SignaturePart> part = SignaturePart.in(payload).filter(found -> found.instant().equals(entry.instant().toString()));
        Optional<SignerKey> key = part.map(found -> keys.get(found.fingerprint()));
        if (key.isEmpty()) {
            return false;
        }
        byte[] statement = Statements.signature(entry.test(), entry.sequence() - 1, before, entry.kind(), payload, part.get());
        return part.get().isBy(key.get(), statement);
    }
}
