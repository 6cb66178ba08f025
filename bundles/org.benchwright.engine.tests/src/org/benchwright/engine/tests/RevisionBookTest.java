package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.engine.revision.RevisionEvent;
import org.benchwright.engine.revision.RevisionFact;
import org.junit.jupiter.api.Test;

/** What follows from what was signed about revisions, without any ledger. */
class RevisionBookTest {

    private static final Instant START = Instant.parse("2026-03-02T07:30:00Z");
    private static final Set<Role> ENGINEER = Set.of(Role.ENGINEER);

    private RevisionBook book = RevisionBook.empty();
    private long number;

    private static Digest digest(String text) {
        return Digest.of(text.getBytes(StandardCharsets.UTF_8));
    }

    private void does(String person, Set<Role> roles, RevisionFact fact) throws RefusedException {
        book = book.with(new RevisionEvent(number + 1, START.plusSeconds(number), person, roles, fact));
        number++;
    }

    private void prepares(String person, String procedure, int revision, String text) throws RefusedException {
        does(person, ENGINEER, new RevisionFact.Prepared(procedure, procedure, revision, digest(text), digest("plan of " + text)));
    }

    private void approves(String person, long prepared, String text) throws RefusedException {
        does(person, ENGINEER, new RevisionFact.Approved(prepared, digest(text), digest("plan of " + text)));
    }

    @Test
    void anEngineerApprovesWhatAnotherEngineerPrepared() throws Exception {
        prepares("RB", "a", 1, "x");
        assertEquals(Optional.empty(), book.current("a"));
        approves("AL", 1, "x");
        assertEquals(1, book.current("a").orElseThrow().number());
        assertEquals("RB", book.current("a").orElseThrow().approval().orElseThrow().preparedBy());
    }

    @Test
    void proceduresDontStandInEachOthersWay() throws Exception {
        prepares("RB", "a", 5, "x");
        approves("AL", 1, "x");
        prepares("RB", "b", 1, "y");
        approves("AL", 3, "y");
        assertEquals(5, book.current("a").orElseThrow().number());
        assertEquals(1, book.current("b").orElseThrow().number());
    }

    @Test
    void aSecondPreparationTakesThePlaceOfTheFirst() throws Exception {
        prepares("RB", "a", 1, "x");
        prepares("AL", "a", 1, "y");
        assertThrows(RefusedException.class, () -> approves("RB", 1, "x"));
        approves("RB", 2, "y");
        assertTrue(book.current("a").orElseThrow().isOf(digest("y"), digest("plan of y")));
    }

    @Test
    void twoRevisionsMayBePreparedAtOnceAndTheOlderCannotBeApprovedLast() throws Exception {
        prepares("RB", "a", 1, "x");
        prepares("RB", "a", 2, "y");
        approves("AL", 2, "y");
        RefusedException refused = assertThrows(RefusedException.class, () -> approves("AL", 1, "x"));
        assertTrue(refused.getMessage().contains("revision 2 was approved before"), refused.getMessage());
    }

    @Test
    void nothingIsApprovedOrWithdrawnTwice() throws Exception {
        prepares("RB", "a", 1, "x");
        approves("AL", 1, "x");
        assertThrows(RefusedException.class, () -> approves("AL", 1, "x"));
        does("AL", ENGINEER, new RevisionFact.Withdrawn(2, "wrong limit"));
        assertThrows(RefusedException.class, () -> does("AL", ENGINEER, new RevisionFact.Withdrawn(2, "again")));
        assertThrows(RefusedException.class, () -> does("AL", ENGINEER, new RevisionFact.Withdrawn(9, "nothing")));
        assertEquals(Optional.empty(), book.current("a"));
        assertEquals(1, book.all().size());
    }

    @Test
    void anotherPlanOfTheSameTextIsNotTheApprovedOne() throws Exception {
        prepares("RB", "a", 1, "x");
        approves("AL", 1, "x");
        RefusedException refused = assertThrows(RefusedException.class,
                () -> book.required("a", "A", 1, digest("x"), digest("another plan")));
        assertTrue(refused.getMessage().contains("this release makes another plan of it"), refused.getMessage());
        assertEquals(1, book.required("a", "A", 1, digest("x"), digest("plan of x")).number());
    }
}
