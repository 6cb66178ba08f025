package org.benchwright.ledger.internal.verify;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LateArrival;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.SignaturePart;
import org.benchwright.ledger.internal.Statements;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.PersonKey;

/**
 * The second line of verification for one event: pure.
 *
 * @param signers  the keys in the list of signers, by fingerprint
 * @param benchKey the only key that may have signed beside those of people, if one is known: then this is that bench's own ledger
 * @param register the register of people
 * @param brought  fingerprints of keys that were brought here from another ledger
 */
record SignatureInspector(Map<String, SignerKey> signers, Optional<SignerKey> benchKey, KnownRegister register, Set<String> brought) {

    /**
     * What was found.
     *
     * @param faults what is wrong
     * @param late   what is not wrong and has to be told
     */
    record Result(List<Fault> faults, Optional<LateArrival> late) {

        private static final Result SOUND = new Result(List.of(), Optional.empty());

        static Result of(Fault fault) {
            return new Result(List.of(fault), Optional.empty());
        }
    }

    People people() {
        return register.people();
    }

    /**
     * What is wrong with the signature of {@code event}, or with its absence.
     *
     * @param before   how far its test had come
     * @param position its place in the ledger
     */
    Result inspect(Event event, TestPoint before, long position) {
        if (!event.payload().values().containsKey(SignaturePart.NAME)) {
            boolean needed = before.sealed() || event.kind().equals(EventKinds.SEALED) || !event.test().isTest();
            return needed ? Result.of(fault(event, FaultKind.SIGNATURE_MISSING, "fault.unsigned")) : Result.SOUND;
        }
        Optional<SignaturePart> part = SignaturePart.in(event.payload());
        if (part.isEmpty() || Meaning.find(part.get().meaning()).isEmpty()
                || !part.get().instant().equals(event.instant().toString())) {
            return Result.of(fault(event, FaultKind.SIGNATURE_FALSE, "fault.signature"));
        }
        return inspect(event, before, part.get(), position);
    }

    private Result inspect(Event event, TestPoint before, SignaturePart part, long position) {
        Optional<SignerKey> key = Optional.ofNullable(signers.get(part.fingerprint()));
        if (key.isEmpty()) {
            return Result.of(fault(event, FaultKind.SIGNER_CHANGED, "fault.signerUnknown"));
        }
        byte[] statement = Statements.signature(event.test(), before.sequence(), before.link(), event.kind(), event.payload(), part);
        if (!part.isBy(key.get(), statement)) {
            return Result.of(fault(event, FaultKind.SIGNATURE_FALSE, "fault.signature"));
        }
        long stands = register.before(position);
        OptionalLong known = part.registerKnown();
        if (part.register().isPresent() && (known.isEmpty() || known.getAsLong() > stands
                || benchKey.isPresent() && known.getAsLong() != stands)) {
            return Result.of(fault(event, FaultKind.SIGNATURE_FALSE, "fault.registerOther", part.register().get(), stands));
        }
        Optional<PersonKey> personal = people().key(key.get().fingerprint());
        if (personal.isPresent()) {
            return personal.get().signs(position, event.instant()) ? Result.SOUND : ended(event, key.get(), personal.get(), known);
        }
        // What was begun on another bench came here with the books, and this bench says so in its list of signers.
        boolean begunElsewhere = !event.test().isTest() && brought.contains(part.fingerprint());
        if (benchKey.filter(own -> !own.equals(key.get())).isPresent() && !begunElsewhere) {
            return Result.of(fault(event, FaultKind.FOREIGN_KEY, "fault.foreignKey"));
        }
        return Result.SOUND;
    }

    private Result ended(Event event, SignerKey key, PersonKey personal, OptionalLong known) {
        String holder = people().holder(key.fingerprint()).orElseThrow().id();
        String words = personal.revoked().map(how -> Messages.text("fault.revoked", holder, how.from(), how.reason()))
                .orElseGet(() -> Messages.text("fault.notYetOrNoLonger", holder));
        OptionalLong end = known.isPresent() && benchKey.isEmpty() ? register.position(known.getAsLong()) : OptionalLong.empty();
        if (end.isPresent() && personal.signedUnknowing(end.getAsLong(), event.instant())) {
            String late = Messages.text("late.key", holder, known.getAsLong());
            return new Result(List.of(), Optional.of(new LateArrival(event.test(), event.sequence(), late)));
        }
        return Result.of(Fault.of(event.test(), event.sequence(), FaultKind.KEY_OUT_OF_USE,
                Messages.text("fault.event", event.test(), event.sequence(), words)));
    }

    private static Fault fault(Event event, FaultKind kind, String key, Object... values) {
        return Fault.of(event.test(), event.sequence(), kind,
                Messages.text("fault.event", event.test(), event.sequence(), Messages.text(key, values)));
    }
}
