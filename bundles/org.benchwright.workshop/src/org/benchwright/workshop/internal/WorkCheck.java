package org.benchwright.workshop.internal;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.workshop.StoreException;

/**
 * Whether those who carried a test out were allowed to, as the register of people stood then; whether releases and seal are by whom they
 * say; whether hazards that were told as known had been read; and whether the bench was proved by the test that is named for it.
 */
final class WorkCheck {

    private final KnownHazards hazards;
    private final ProvedBenches proofs;
    private final PeopleHistory people;

    WorkCheck(Ledger documents) throws StoreException {
        this.hazards = new KnownHazards(documents);
        this.proofs = new ProvedBenches(documents);
        this.people = LedgerWork.of(() -> PeopleHistory.asFound(documents));
    }

    /**
     * Something that is wrong.
     *
     * @param sequence   number of the event
     * @param byRegister true if only the register of people, as it stood in this ledger then, speaks against it
     * @param words      what
     */
    record Finding(long sequence, boolean byRegister, String words) {
    }

    /** What is wrong; nothing in a rehearsal. */
    List<Finding> findings(TestRun run, List<LedgerEntry> entries) throws StoreException {
        List<Finding> findings = new ArrayList<>();
        boolean concluded = false;
        for (int i = 0; i < entries.size() && !run.rehearsal(); i++) {
            LedgerEntry entry = entries.get(i);
            if (i < run.events().size()) {
                EventBody body = run.events().get(i).body();
                concluded = body instanceof Derived.ConclusionReached || concluded && !(body instanceof Fact.Struck);
                told(run, run.events().get(i), entry, concluded).ifPresent(findings::add);
            } else if (entry.kind().equals(EventKinds.SEALED)) {
                sealed(run, entry).ifPresent(words -> findings.add(hard(entry, words)));
            } else if (entry.kind().equals(EventKinds.RETURNED)) {
                PeopleHistory.otherMeaning(entry, Meaning.RECEIVED_BACK).or(() -> people.notByTheBench(entry))
                        .ifPresent(words -> findings.add(hard(entry, words)));
            }
        }
        return findings;
    }

    private Optional<Finding> told(TestRun run, TestEvent event, LedgerEntry entry, boolean concluded) throws StoreException {
        People then = people.at(entry.position());
        if (event.body() instanceof Fact.Released released) {
            Optional<Finding> release = release(released, entry, then, run.opening().shift().isPresent());
            if (release.isPresent()) {
                return release;
            }
        } else if (event.body() instanceof Fact.HazardKnown known && !hazards.holds(known, event.actor(), run.opening().plan(), entry.position())) {
            return Optional.of(hard(entry, Message.FAULT_HAZARD_UNREAD.text(event.actor().id(), known.hazard(), known.test())));
        }
        if (event.body() instanceof Fact.BenchProved proof && !proofs.holds(proof, run.opening().station(), entry.position())) {
            return Optional.of(hard(entry, Message.FAULT_BENCH_UNPROVED.text(proof.test())));
        }
        boolean free = concluded || !(event.body() instanceof Fact) || event.actor().role() != Role.TECHNICIAN
                || event.body() instanceof Fact.Abandoned || event.body() instanceof Fact.Noted;
        Fact.Opened opened = run.opening();
        LocalDate day = LocalDate.ofInstant(entry.instant(), ZoneOffset.UTC);
        return free || then.mayCarryOut(event.actor().id(), opened.family(), opened.procedure(), day) ? Optional.empty()
                : Optional.of(soft(entry, Message.FAULT_UNAUTHORISED.text(event.actor().id(), opened.procedure(), opened.family())));
    }

    /** @param asked whether the test is from a release that asks for the signature of whoever has a key */
    private Optional<Finding> release(Fact.Released released, LedgerEntry entry, People then, boolean asked) {
        Optional<Person> person = then.person(released.by().id());
        Optional<EntrySignature> signature = EntrySignature.in(entry);
        if (signature.isEmpty()) {
            return asked && person.flatMap(Person::key).isPresent() ? Optional.of(soft(entry, Message.FAULT_RELEASE_UNSIGNED.text(released.by().id()))) : Optional.empty();
        }
        Optional<Person> signer = people.signer(entry, then);
        if (signer.filter(who -> who.id().equals(released.by().id())).isEmpty() || signature.get().meaning() != Meaning.RELEASED) {
            return Optional.of(hard(entry, Message.FAULT_RELEASE_SIGNER.text(released.by().id())));
        }
        Optional<String> other = PeopleHistory.otherInPrint(entry, released.by());
        if (other.isPresent()) {
            return Optional.of(hard(entry, other.get()));
        }
        Role as = released.by().role();
        return PeopleKeys.mayRelease(signer.get(), as) ? Optional.empty()
                : Optional.of(soft(entry, Message.FAULT_RELEASE_ROLE.text(released.by().id(), as.label())));
    }

    private Optional<String> sealed(TestRun run, LedgerEntry entry) {
        Optional<Person> holder = people.holder(entry);
        if (!sealedBy(entry, holder)) {
            return Optional.of(Message.FAULT_SEALER.text(entry.actor().toString()));
        } else if (holder.isPresent() && run.events().stream().noneMatch(event -> event.body() instanceof Fact && event.actor().equals(entry.actor()))) {
            return Optional.of(Message.FAULT_SEALER_IDLE.text(entry.actor().id()));
        }
        Optional<String> other = PeopleHistory.otherMeaning(entry, Meaning.CARRIED_OUT);
        return other.isPresent() || holder.isEmpty() ? other : PeopleHistory.otherInPrint(entry, entry.actor());
    }

    /** By the bench, or by the technician who is named; which key is the bench's is for whoever compares checkpoints to know. */
    private static boolean sealedBy(LedgerEntry entry, Optional<Person> holder) {
        return switch (entry.actor().role()) {
            case BENCH -> holder.isEmpty();
            case TECHNICIAN -> holder.filter(person -> person.id().equals(entry.actor().id())).isPresent();
            default -> false;
        };
    }

    private static Finding hard(LedgerEntry entry, String words) {
        return new Finding(entry.sequence(), false, words);
    }

    private static Finding soft(LedgerEntry entry, String words) {
        return new Finding(entry.sequence(), true, words);
    }
}
