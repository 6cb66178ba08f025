package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.benchwright.core.Role;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.PeopleFact;
import org.benchwright.ledger.people.PeopleRefusedException;
import org.benchwright.ledger.people.Person;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Who may enter what in the register of people. */
class PeopleBookTest extends WithRegister {

    @AfterEach
    void nothingIsWrong() throws Exception {
        assertEquals(List.of(), People.read(ledger).objections());
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(file())).faults());
    }

    private Person person(String id) throws LedgerException {
        return People.read(ledger).person(id).orElseThrow();
    }

    private void refused(String words, PeopleFact fact, Signer signer) throws LedgerException {
        long before = ledger.lastSequence(TestId.PEOPLE);
        PeopleRefusedException refusal = assertThrows(PeopleRefusedException.class, () -> register.enter(fact, signer));
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
        assertEquals(before, ledger.lastSequence(TestId.PEOPLE));
    }

    @Test
    void theFirstAdministratorIsEnteredByTheBenchAndThenTheBenchEntersNothingMore() throws Exception {
        refused("must be an administrator", keyAfterAdding("RB"), bench);
        register.begin();
        assertEquals(Set.of(Role.ADMINISTRATOR), person("LW").roles());
        refused("the bench's own key signs nothing", new PeopleFact.PersonAdded("KM", "supervisor KM"), bench);
        refused("the bench's own key signs nothing", new PeopleFact.RoleGranted("RB", Role.ENGINEER), Register.newKey());
    }

    private PeopleFact keyAfterAdding(String id) throws LedgerException {
        register.enter(new PeopleFact.PersonAdded(id, "somebody"), bench);
        return new PeopleFact.KeyEnrolled(id, Register.newKey().key());
    }

    @Test
    void onlyAnAdministratorAddsPeopleAndGivesRoles() throws Exception {
        register.begin();
        register.add("RB", Role.ENGINEER);
        refused("no administrator", new PeopleFact.PersonAdded("KM", "supervisor KM"), register.key("RB"));
        refused("no administrator", new PeopleFact.RoleGranted("RB", Role.ADMINISTRATOR), register.key("RB"));
        refused("no administrator", new PeopleFact.RoleEnded("LW", Role.ADMINISTRATOR, "mine now"), register.key("RB"));
        refused("no administrator", new PeopleFact.KeyRevoked("LW", register.key("LW").key().fingerprint(), register.now(), "mine now"),
                register.key("RB"));
        register.enter(new PeopleFact.RoleGranted("RB", Role.SUPERVISOR), register.key("LW"));
        register.enter(new PeopleFact.RoleEnded("RB", Role.ENGINEER, "moved on"), register.key("LW"));
        assertEquals(Set.of(Role.SUPERVISOR), person("RB").roles());
    }

    @Test
    void whatDoesNotFitIsRefused() throws Exception {
        register.begin();
        Signer lw = register.key("LW");
        refused("can't be an id", new PeopleFact.PersonAdded("../x", "X"), lw);
        refused("in the register already", new PeopleFact.PersonAdded("lw", "X"), lw);
        refused("A name is needed", new PeopleFact.PersonAdded("QN", " "), lw);
        refused("nobody with the id", new PeopleFact.RoleGranted("QN", Role.ENGINEER), lw);
        refused("no role of a person", new PeopleFact.RoleGranted("LW", Role.BENCH), lw);
        refused("is administrator already", new PeopleFact.RoleGranted("LW", Role.ADMINISTRATOR), lw);
        refused("is not engineer", new PeopleFact.RoleEnded("LW", Role.ENGINEER, "x"), lw);
        refused("last administrator", new PeopleFact.RoleEnded("LW", Role.ADMINISTRATOR, "x"), lw);
        refused("last administrator", new PeopleFact.KeyRevoked("LW", lw.key().fingerprint(), register.now(), "lost"), lw);
        refused("has a key", new PeopleFact.KeyEnrolled("LW", Register.newKey().key()), lw);
        register.add("RB", Role.ENGINEER);
        refused("not come", new PeopleFact.KeyRevoked("RB", register.key("RB").key().fingerprint(), register.now().plusSeconds(99999), "lost"), lw);
        refused("A reason is needed", new PeopleFact.KeyRevoked("RB", register.key("RB").key().fingerprint(), register.now(), ""), lw);
        refused("has no key", new PeopleFact.KeyRevoked("LW", register.key("RB").key().fingerprint(), register.now(), "lost"), lw);
    }

    @Test
    void whoIsAuthorisedForAFamilyMayAndNobodyElse() throws Exception {
        register.begin();
        register.add("QN", Role.TECHNICIAN);
        register.add("TM", Role.TECHNICIAN);
        Signer lw = register.key("LW");
        LocalDate first = LocalDate.of(2026, 3, 2);
        LocalDate last = first.plusDays(9);
        refused("names a family and a procedure", new PeopleFact.Authorised("QN", "tarn c16", "*", first, last), lw);
        refused("ends on its first day or later", new PeopleFact.Authorised("QN", "tarn_c16", "*", first, first.minusDays(1)), lw);
        refused("no administrator", new PeopleFact.Authorised("QN", "tarn_c16", "*", first, last), register.key("QN"));
        assertTrue(People.read(ledger).mayCarryOut("TM", "tarn_c16", "acceptance", first), "as long as nobody is authorised everybody is");
        register.enter(new PeopleFact.Authorised("QN", "tarn_c16", "*", first, last), lw);
        People people = People.read(ledger);
        for (LocalDate day : List.of(first, last)) {
            assertTrue(people.mayCarryOut("QN", "tarn_c16", "acceptance", day), "both days are included: " + day);
            assertFalse(people.mayCarryOut("TM", "tarn_c16", "acceptance", day));
            assertTrue(people.mayCarryOut("TM", "tarn_a8", "acceptance", day), "of another family nothing was said");
        }
        assertFalse(people.mayCarryOut("QN", "tarn_c16", "acceptance", first.minusDays(1)));
        assertFalse(people.mayCarryOut("QN", "tarn_c16", "acceptance", last.plusDays(1)));
        refused("is not authorised", new PeopleFact.AuthorisationEnded("QN", "tarn_c16", "acceptance", "named otherwise than granted"), lw);
        refused("A reason is needed", new PeopleFact.AuthorisationEnded("QN", "tarn_c16", "*", " "), lw);
        register.enter(new PeopleFact.AuthorisationEnded("QN", "tarn_c16", "*", "moved on"), lw);
        assertFalse(People.read(ledger).mayCarryOut("QN", "tarn_c16", "acceptance", first));
        assertFalse(People.read(ledger).mayCarryOut("TM", "tarn_c16", "acceptance", first), "that somebody has to be is not ended with it");
        refused("is not authorised", new PeopleFact.AuthorisationEnded("QN", "tarn_c16", "*", "again"), lw);
    }

    @Test
    void aRotatedKeySignsNothingMoreAndWhatItSignedStaysTrue() throws Exception {
        register.begin();
        register.add("KM", Role.ADMINISTRATOR);
        Signer old = register.key("KM");
        Signer next = Register.newKey();
        refused("Only KM", new PeopleFact.KeyRotated("KM", next.key()), register.key("LW"));
        refused("in use already", new PeopleFact.KeyRotated("KM", register.key("LW").key()), old);
        register.enter(new PeopleFact.PersonAdded("QN", "by the old key"), old);
        register.enter(new PeopleFact.KeyRotated("KM", next.key()), old);
        refused("replaced or revoked", new PeopleFact.PersonAdded("AB", "by the old key"), old);
        register.enter(new PeopleFact.PersonAdded("CD", "by the new key"), next);
        assertEquals(2, person("KM").keys().size());
        assertEquals(next.key(), person("KM").key().orElseThrow().key());
    }

    @Test
    void aRevokedKeySignsNothingMoreEvenByAClockThatWasSetBack() throws Exception {
        register.begin();
        register.add("KM", Role.ADMINISTRATOR);
        Signer lost = register.key("KM");
        register.enter(new PeopleFact.PersonAdded("QN", "before"), lost);
        register.enter(new PeopleFact.KeyRevoked("KM", lost.key().fingerprint(), register.now().plusSeconds(1), "token lost"), register.key("LW"));
        refused("replaced or revoked", new PeopleFact.PersonAdded("AB", "after"), lost);
        assertFalse(person("KM").keys().get(0).signs(Long.MAX_VALUE, Register.START));
        Signer again = Register.newKey();
        register.enter(new PeopleFact.KeyEnrolled("KM", again.key()), register.key("LW"));
        register.enter(new PeopleFact.PersonAdded("CD", "by the new key"), again);
    }

    @Test
    void peopleRevokeTheirOwnKeysThemselves() throws Exception {
        register.begin();
        register.add("RB", Role.ENGINEER);
        register.enter(new PeopleFact.KeyRevoked("RB", register.key("RB").key().fingerprint(), register.now(), "seen by others"),
                register.key("RB"));
        assertTrue(person("RB").key().isEmpty());
    }
}
