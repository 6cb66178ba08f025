package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.PeopleFact;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody with the file, the program or a stolen key can try on the register and on what people sign. */
class PeopleAttackTest extends WithRegister {

    @BeforeEach
    void begin() throws Exception {
        register.begin();
        register.add("RB", Role.ENGINEER);
    }

    private List<Fault> faults() throws Exception {
        return LedgerVerifier.verify(VerificationRequest.of(file())).faults();
    }

    private void only(FaultKind kind, TestId where, long sequence, String words) throws Exception {
        List<Fault> faults = faults();
        assertEquals(1, faults.size(), faults.toString());
        assertEquals(kind, faults.get(0).kind());
        assertEquals(where, faults.get(0).test().orElseThrow());
        assertEquals(sequence, faults.get(0).sequence().orElseThrow());
        assertTrue(faults.get(0).words().contains(words), faults.get(0).words());
    }

    /** Signs something past the rules, as a changed program could. */
    private void sign(TestId where, long expected, String kind, String payload, Signer signer, Instant instant) throws Exception {
        EntryDraft draft = new EntryDraft(where, instant, 1, Duration.ZERO, new Actor("RB", Role.ENGINEER), kind, payload);
        ledger.appendSigned(draft, expected, new Signing(signer, Meaning.APPROVED, "engineer RB", bench));
    }

    @Test
    void aSignatureWithARevokedKeyIsReportedAndEarlierOnesStayTrue() throws Exception {
        Signer key = register.key("RB");
        sign(TestId.REVISIONS, 0, "x", "{}", key, register.now());
        register.enter(new PeopleFact.KeyRevoked("RB", key.key().fingerprint(), register.now().plusSeconds(1), "token lost"), register.key("LW"));
        assertEquals(List.of(), faults());
        // The clock was set back to before the loss; the place in the ledger tells.
        sign(TestId.REVISIONS, 1, "x", "{}", key, Register.START);
        only(FaultKind.KEY_OUT_OF_USE, TestId.REVISIONS, 2, "token lost");
    }

    @Test
    void aRevocationReachesBackToTheInstantOfTheLoss() throws Exception {
        Signer key = register.key("RB");
        Instant lost = register.now();
        sign(TestId.REVISIONS, 0, "x", "{}", key, lost.minusSeconds(1));
        sign(TestId.REVISIONS, 1, "x", "{}", key, lost.plusSeconds(1));
        register.enter(new PeopleFact.KeyRevoked("RB", key.key().fingerprint(), lost, "stolen, found out later"), register.key("LW"));
        only(FaultKind.KEY_OUT_OF_USE, TestId.REVISIONS, 2, "stolen, found out later");
    }

    @Test
    void aSignatureWithAKeyThatIsNobodysIsForeign() throws Exception {
        sign(TestId.REVISIONS, 0, "x", "{}", Register.newKey(), register.now());
        assertTrue(faults().stream().anyMatch(fault -> fault.kind() == FaultKind.FOREIGN_KEY && fault.sequence().isPresent()));
    }

    @Test
    void aKeyThatIsEnrolledLaterDidNotSignEarlier() throws Exception {
        Signer key = Register.newKey();
        sign(TestId.REVISIONS, 0, "x", "{}", key, register.now());
        register.enter(new PeopleFact.PersonAdded("KM", "supervisor KM"), register.key("LW"));
        register.enter(new PeopleFact.KeyEnrolled("KM", key.key()), register.key("LW"));
        only(FaultKind.KEY_OUT_OF_USE, TestId.REVISIONS, 1, "before that was enrolled");
    }

    @Test
    void aRoleTakenWithoutARightToItIsReportedAndGivesNothing() throws Exception {
        long last = ledger.lastSequence(TestId.PEOPLE);
        sign(TestId.PEOPLE, last, "role-granted", "{\"person\":\"RB\",\"role\":\"administrator\"}", register.key("RB"), register.now());
        only(FaultKind.REGISTER_FALSE, TestId.PEOPLE, last + 1, "no administrator");
        assertEquals(1, People.read(ledger).administrators().size());
    }

    @Test
    void aPersonEnteredByTheBenchOnceThereAreKeysIsReported() throws Exception {
        long last = ledger.lastSequence(TestId.PEOPLE);
        sign(TestId.PEOPLE, last, "person-added", "{\"person\":\"XX\",\"name\":\"nobody\"}", bench, register.now());
        only(FaultKind.REGISTER_FALSE, TestId.PEOPLE, last + 1, "the bench's own key");
    }

    /** Whoever enters something says so in their own name, also in print, in a role of theirs, and means that it is registered. */
    @ParameterizedTest
    @CsvSource({"LW, ADMINISTRATOR, administrator LW, VOIDED", "RB, ADMINISTRATOR, administrator RB, REGISTERED",
        "LW, ADMINISTRATOR, administrator RB, REGISTERED", "LW, AUDITOR, auditor LW, REGISTERED"})
    void anEntryThatSaysSomethingElseThanItsSignerIsReported(String named, Role as, String printed, Meaning meaning) throws Exception {
        long last = ledger.lastSequence(TestId.PEOPLE);
        EntryDraft draft = new EntryDraft(TestId.PEOPLE, register.now(), 1, Duration.ZERO, new Actor(named, as), "person-added",
                "{\"name\":\"nobody\",\"person\":\"XX\"}");
        ledger.appendSigned(draft, last, new Signing(register.key("LW"), meaning, printed, bench));
        only(FaultKind.REGISTER_FALSE, TestId.PEOPLE, last + 1, "It claims to be " + meaning.word() + " by " + printed + ", and was registered by LW.");
        assertTrue(People.read(ledger).person("XX").isEmpty());
    }

    @Test
    void anEntryOfAnUnknownFormIsReported() throws Exception {
        long last = ledger.lastSequence(TestId.PEOPLE);
        sign(TestId.PEOPLE, last, "person-added", "{\"person\":\"XX\",\"name\":\"n\",\"extra\":\"\"}", register.key("LW"), register.now());
        only(FaultKind.REGISTER_FALSE, TestId.PEOPLE, last + 1, "can't be read");
    }

    @Test
    void anUnsignedEntryIsNotTaken() throws Exception {
        EntryDraft draft = new EntryDraft(TestId.PEOPLE, register.now(), 1, Duration.ZERO, new Actor("LW", Role.ADMINISTRATOR), "person-added",
                "{\"person\":\"XX\",\"name\":\"n\"}");
        assertThrows(PayloadException.class,
                () -> ledger.append(TestId.PEOPLE, ledger.lastSequence(TestId.PEOPLE), List.of(draft)));
    }

    @Test
    void aChangedNameIsFoundAndNothingIsDoneByTheRegisterAnyMore() throws Exception {
        try (Tamper tamper = Tamper.with(file())) {
            tamper.behindTheTriggers(work -> {
                byte[] canonical = work.bytes("SELECT canonical FROM event WHERE position = 1");
                String changed = new String(canonical, StandardCharsets.UTF_8).replace("administrator LW", "administrator WL");
                work.run("UPDATE event SET canonical = ? WHERE position = 1", (Object) changed.getBytes(StandardCharsets.UTF_8));
            });
        }
        assertTrue(faults().stream().anyMatch(fault -> fault.kind() == FaultKind.LINK_BROKEN));
        assertThrows(LedgerDamagedException.class, () -> People.read(ledger));
    }

    @Test
    void aCheckpointIsNotForPeopleToSign() throws Exception {
        EntryDraft draft = new EntryDraft(TestId.REVISIONS, register.now(), 1, Duration.ZERO, new Actor("RB", Role.ENGINEER), "x", "{}");
        ledger.appendSigned(draft, 0, new Signing(register.key("RB"), Meaning.APPROVED, "engineer RB"));
        assertEquals(List.of(FaultKind.FOREIGN_KEY), faults().stream().map(Fault::kind).toList());
    }

    /** Every text of every event of the book, each in its turn: what comes of it is a fault, whatever the text is. */
    @ParameterizedTest
    @ValueSource(strings = {"", "zz", "T-4K7M2-QXD9R", "+1000000000-12-31T23:59:59Z",
        "ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff"})
    void aBookWhoseFieldsAreNonsenseIsReportedAndNeverCrashesVerification(String nonsense) throws Exception {
        register.enter(new PeopleFact.KeyRevoked("RB", register.key("RB").key().fingerprint(), register.now(), "lost"), register.key("LW"));
        Path file = file();
        try (Tamper tamper = Tamper.with(file)) {
            for (int event : List.of(1, 2, 3, 7)) {
                String where = " WHERE position = " + event;
                byte[] before = tamper.bytes("SELECT canonical FROM event" + where);
                Matcher texts = Pattern.compile(":\"([^\"]*)\"").matcher(new String(before, StandardCharsets.UTF_8));
                while (texts.find()) {
                    String changed = new String(before, StandardCharsets.UTF_8).substring(0, texts.start(1)) + nonsense
                            + new String(before, StandardCharsets.UTF_8).substring(texts.end(1));
                    tamper.behindTheTriggers(work -> work.run("UPDATE event SET canonical = ?" + where,
                            (Object) changed.getBytes(StandardCharsets.UTF_8)));
                    assertTrue(faults().stream().anyMatch(fault -> fault.kind() != FaultKind.SAFEGUARDS_CHANGED), changed);
                    assertThrows(LedgerException.class, () -> People.read(ledger), changed);
                }
                tamper.behindTheTriggers(work -> work.run("UPDATE event SET canonical = ?" + where, (Object) before));
            }
        }
        assertEquals(List.of(), faults());
    }
}
