package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Approval;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.RegisteredPerson;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.Sitting;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Revisions that are prepared by one person, approved by another, and tests that are opened by them. */
class ApprovalsTest extends AtTheBench {

    private static final SerialNumber SERIAL = new SerialNumber("C16-004711");
    private static final String NAME = Approvals.key(SamplePlan.acceptance());

    private Approvals approvals;
    private Registrar registrar;

    @BeforeEach
    void enterPeople() throws Exception {
        Approved.people(ledger, time.benchTime());
        approvals = ledger.approvals(time.benchTime());
        registrar = ledger.registrar(time.benchTime(), 10);
    }

    @AfterEach
    void verify() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertTrue(report.sound(), report.links() + " " + report.signatures() + " " + report.decisions());
    }

    private static CompiledProcedure procedure(int revision, String text) {
        Plan plan = SamplePlan.acceptance();
        return new CompiledProcedure(new Plan(plan.format(), plan.name(), plan.title(), revision, plan.purpose(), plan.retestOf(),
                plan.provesBenchFor(), plan.family(), plan.claim(), plan.hazards(), plan.protectedItems(), plan.instruments(),
                plan.preconditions(), plan.preconditionUnmet(), plan.stages(), plan.makeSafe(), plan.end()), text);
    }

    private Revision approved(int revision, String text) throws Exception {
        approvals.prepare(procedure(revision, text), Approved.by("RB"));
        return approvals.approve(procedure(revision, text), Approved.by("KM"));
    }

    private Sitting test(int revision, String text) throws Exception {
        return workshop.open(procedure(revision, text), SERIAL, QN, false);
    }

    private static void refused(String words, Executable work) {
        String message = assertThrows(RefusedException.class, work).getMessage();
        assertTrue(message.contains(words), message);
    }

    @Test
    void aDraftIsRehearsedOnlyAndTheRefusalSaysHowItIsApproved() throws Exception {
        workshop.open(procedure(3, "a"), SERIAL, QN, true);
        refused("is a draft: nobody has approved it. A draft can be rehearsed. For a test, one person signs it as prepared and a second",
                () -> test(3, "a"));
        approvals.prepare(procedure(3, "a"), Approved.by("RB"));
        refused("is a draft", () -> test(3, "a"));
        assertEquals(1, ledger.tests().size());
    }

    @Test
    void aTestNamesTheApprovalThatItReliesOn() throws Exception {
        time.advance(Duration.ofDays(1));
        Revision revision = approved(3, "a");
        Fact.Opened opened = test(3, "a").run().opening();
        assertEquals(Optional.of(new Approval(2, "RB", "KM", time.instant())), opened.approval());
        assertEquals(revision.text(), opened.text());
        assertEquals(revision.plan(), opened.plan());
        assertEquals(procedure(3, "a").plan(), ledger.plan(revision));
    }

    @Test
    void twoPeopleAreNeededEachWithARole() throws Exception {
        refused("RB prepared it, and approval takes a second person", () -> {
            approvals.prepare(procedure(3, "a"), Approved.by("RB"));
            approvals.approve(procedure(3, "a"), Approved.by("RB"));
        });
        refused("KM is no engineer", () -> approvals.prepare(procedure(3, "a"), Approved.by("KM")));
        refused("LW may not do that", () -> approvals.approve(procedure(3, "a"), Approved.by("LW")));
        refused("nobody with the id XX", () -> approvals.approve(procedure(3, "a"), Approved.by("XX")));
        refused("not the password of KM", () -> approvals.approve(procedure(3, "a"), new SigningPerson("KM", "wrong guess".toCharArray())));
        registrar.end(Approved.by("LW"), "KM", Role.SUPERVISOR, "left");
        refused("KM may not do that", () -> approvals.approve(procedure(3, "a"), Approved.by("KM")));
    }

    @Test
    void whatIsApprovedIsWhatWasPrepared() throws Exception {
        refused("was not prepared", () -> approvals.approve(procedure(3, "a"), Approved.by("KM")));
        approvals.prepare(procedure(3, "a"), Approved.by("RB"));
        refused("was changed since RB prepared it", () -> approvals.approve(procedure(3, "b"), Approved.by("KM")));
        approvals.prepare(procedure(3, "b"), Approved.by("RB"));
        approvals.approve(procedure(3, "b"), Approved.by("KM"));
        refused("was approved with another text, so this one is a draft", () -> test(3, "a"));
    }

    @Test
    void anApprovedRevisionNeverChangesAndNumbersGrow() throws Exception {
        approved(3, "a");
        refused("was approved by KM already", () -> approvals.prepare(procedure(3, "a"), Approved.by("RB")));
        refused("was approved by KM with another text", () -> approvals.prepare(procedure(3, "b"), Approved.by("RB")));
        refused("revision 3 was approved before", () -> approvals.prepare(procedure(2, "b"), Approved.by("RB")));
        approved(4, "b");
        refused("was superseded by revision 4", () -> test(3, "a"));
        assertEquals(4, test(4, "b").run().opening().revision());
    }

    @Test
    void aTestStaysWithTheRevisionThatItWasOpenedBy() throws Exception {
        approved(3, "a");
        Sitting sitting = test(3, "a");
        approved(4, "b");
        time.advance(Duration.ofMinutes(5));
        assertEquals(3, workshop.resume(sitting.test(), QN).run().plan().revision());
    }

    @Test
    void whatIsWithdrawnOpensNothingAndTheRevisionBeforeHoldsAgain() throws Exception {
        approved(3, "a");
        approved(4, "b");
        Sitting opened = test(4, "b");
        refused("A reason is needed", () -> approvals.withdraw(NAME, 4, " ", Approved.by("KM")));
        approvals.withdraw(NAME, 4, "the rail limit is wrong", Approved.by("KM"));
        refused("was withdrawn: the rail limit is wrong", () -> test(4, "b"));
        assertEquals(3, test(3, "a").run().opening().revision());
        refused("was approved by KM", () -> approvals.prepare(procedure(4, "c"), Approved.by("RB")));
        assertEquals(4, workshop.resume(opened.test(), QN).run().plan().revision());
    }

    @Test
    void aPreparationIsWithdrawnAndItsNumberIsFreeAgain() throws Exception {
        approvals.prepare(procedure(3, "a"), Approved.by("RB"));
        approvals.withdraw(NAME, 3, "not yet", Approved.by("RB"));
        refused("was withdrawn: not yet", () -> approvals.approve(procedure(3, "a"), Approved.by("KM")));
        approved(3, "b");
    }

    @Test
    void aRevokedKeySignsNoMoreAndWhatItSignedSinceTheLossHoldsNoMore() throws Exception {
        approved(3, "a");
        time.advance(Duration.ofDays(1));
        approvals.prepare(procedure(4, "b"), Approved.by("RB"));
        time.advance(Duration.ofDays(1));
        registrar.revoke(Approved.by("LW"), "KM", "", Optional.of(time.instant()), "token lost");
        refused("has no key in use", () -> approvals.approve(procedure(4, "b"), Approved.by("KM")));
        assertEquals(3, test(3, "a").run().opening().revision());
    }

    @Test
    void peopleChangeTheirPasswordsByRotatingTheirKeys() throws Exception {
        approved(3, "a");
        registrar.rotate(Approved.by("KM"), "five dry badgers".toCharArray());
        approvals.prepare(procedure(4, "b"), Approved.by("RB"));
        refused("not the password", () -> approvals.approve(procedure(4, "b"), Approved.by("KM")));
        approvals.approve(procedure(4, "b"), new SigningPerson("KM", "five dry badgers".toCharArray()));
        RegisteredPerson km = registrar.people().get(2);
        assertEquals(List.of(RegisteredPerson.KeyState.REPLACED, RegisteredPerson.KeyState.IN_USE),
                km.keys().stream().map(RegisteredPerson.Key::state).toList());
        refused("begun already", () -> registrar.begin("XX", "nobody", List.of(), "three old herons".toCharArray()));
    }

    @Test
    void aKeyThatIsRevokedInTheMomentOfSigningSignsNothing() throws Exception {
        approvals.prepare(procedure(3, "a"), Approved.by("RB"));
        BenchTime then = time.interrupted(() -> registrar.revoke(Approved.by("LW"), "KM", "", Optional.empty(), "token lost"));
        assertThrows(OvertakenException.class, () -> ledger.approvals(then).approve(procedure(3, "a"), Approved.by("KM")));
        assertEquals(Optional.empty(), approvals.book().find(NAME, 3).orElseThrow().approved());
    }

    @Test
    void aRoleThatIsEndedInTheMomentOfSigningSignsNothing() throws Exception {
        BenchTime then = time.interrupted(() -> registrar.end(Approved.by("LW"), "RB", Role.ENGINEER, "moved on"));
        assertThrows(OvertakenException.class, () -> ledger.approvals(then).prepare(procedure(3, "a"), Approved.by("RB")));
        assertEquals(Optional.empty(), approvals.book().find(NAME, 3));
    }
}
