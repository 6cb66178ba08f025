package org.benchwright.ledger.internal.verify;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
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
 * @param benchKey the only key that may have signed beside those of people, if one is known
 * @param people   the register of people
 */
record SignatureInspector(Map<String, SignerKey> signers, Optional<SignerKey> benchKey, People people) {

    /**
     * What is wrong with the signature of {@code event}, or with its absence.
     *
     * @param before   how far its test had come
     * @param position its place in the ledger
     */
    List<Fault> inspect(Event event, TestPoint before, long position) {
        if (!event.payload().values().containsKey(SignaturePart.NAME)) {
            boolean needed = before.sealed() || event.kind().equals(EventKinds.SEALED) || !event.test().isTest();
            return needed ? List.of(fault(event, FaultKind.SIGNATURE_MISSING, "fault.unsigned")) : List.of();
        }
        Optional<SignaturePart> part = SignaturePart.in(event.payload());
        if (part.isEmpty() || Meaning.find(part.get().meaning()).isEmpty()
                || !part.get().instant().equals(event.instant().toString())) {
            return List.of(fault(event, FaultKind.SIGNATURE_FALSE, "fault.signature"));
        }
        return inspect(event, before, part.get(), position);
    }

    private List<Fault> inspect(Event event, TestPoint before, SignaturePart part, long position) {
        Optional<SignerKey> key = Optional.ofNullable(signers.get(part.fingerprint()));
        if (key.isEmpty()) {
            return List.of(fault(event, FaultKind.SIGNER_CHANGED, "fault.signerUnknown"));
        }
        byte[] statement = Statements.signature(event.test(), before.sequence(), before.link(), event.kind(), event.payload(), part);
        if (part.signature().filter(bytes -> key.get().verifies(statement, bytes)).isEmpty()) {
            return List.of(fault(event, FaultKind.SIGNATURE_FALSE, "fault.signature"));
        }
        Optional<PersonKey> personal = people.key(key.get().fingerprint());
        if (personal.isPresent()) {
            return personal.get().signs(position, event.instant()) ? List.of() : List.of(ended(event, key.get(), personal.get()));
        }
        if (benchKey.filter(own -> !own.equals(key.get())).isPresent()) {
            return List.of(fault(event, FaultKind.FOREIGN_KEY, "fault.foreignKey"));
        }
        return List.of();
    }

    private Fault ended(Event event, SignerKey key, PersonKey personal) {
        String holder = people.holder(key.fingerprint()).orElseThrow().id();
        String words = personal.revoked().map(how -> Messages.text("fault.revoked", holder, how.from(), how.reason()))
                .orElseGet(() -> Messages.text("fault.notYetOrNoLonger", holder));
        return Fault.of(event.test(), event.sequence(), FaultKind.KEY_OUT_OF_USE,
                Messages.text("fault.event", event.test(), event.sequence(), words));
    }

    private static Fault fault(Event event, FaultKind kind, String key) {
        return Fault.of(event.test(), event.sequence(), kind,
                Messages.text("fault.event", event.test(), event.sequence(), Messages.text(key)));
    }
}
