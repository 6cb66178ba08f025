package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.OptionalLong;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptEvent;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.ReplacedPart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What can be told of units in the house, and what is refused. */
class ReceiptBookTest {

    private static final Instant DAY = Instant.parse("2026-03-02T08:00:00Z");
    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    private static ReceiptFact.Received unit(String serial) {
        return new ReceiptFact.Received("O-114", "Millbrook", serial, Plate.READ, Optional.of("tarn_c16"), "stops when warm", "", "", List.of(),
                Optional.empty());
    }

    private static ReceiptEvent event(long number, ReceiptFact fact) {
        return new ReceiptEvent(number, DAY.plusSeconds(number), QN, fact);
    }

    private static ReceiptBook book(ReceiptFact... facts) throws RefusedException {
        ReceiptBook book = ReceiptBook.empty();
        for (int i = 0; i < facts.length; i++) {
            book = book.with(event(i + 1, facts[i]));
        }
        return book;
    }

    private static String refusal(ReceiptBook book, ReceiptFact fact) {
        int before = book.receipts().size();
        String words = assertThrows(RefusedException.class, () -> book.with(event(99, fact))).getMessage();
        assertEquals(before, book.receipts().size());
        return words;
    }

    @Test
    void aUnitThatComesInAgainHasANewReceiptWhichIsTheOneThatCounts() throws RefusedException {
        ReceiptBook book = book(unit("C16-004711"), unit("C16-004712"), unit("C16-004711"));
        assertEquals(3, book.current("C16-004711").orElseThrow().number());
        assertEquals(List.of("R-1", "R-3"), book.of("C16-004711").stream().map(Receipt::name).toList());
        assertEquals(Optional.empty(), book.current("C16-009999"));
    }

    @Test
    void whatWasSaidIsCorrectedAndTheFirstEntryStaysReadable() throws RefusedException {
        ReceiptFact.Received tagged = new ReceiptFact.Received("", "", "W-31", Plate.UNREADABLE, Optional.empty(), "", "", "", List.of(),
                Optional.empty());
        ReceiptBook book = book(tagged, new ReceiptFact.Corrected(1, "the plate was cleaned", unit("C16-004711")));
        Receipt receipt = book.receipt(1).orElseThrow();
        assertEquals("C16-004711", receipt.said().unit());
        assertEquals(2, receipt.statement());
        assertEquals("W-31", book.statement(1).orElseThrow().said().unit());
        assertEquals(1, book.statement(2).orElseThrow().receipt());
        assertTrue(refusal(book, new ReceiptFact.Corrected(1, " ", tagged)).contains("reason"));
        assertEquals("There is no receipt R-7.", refusal(book, new ReceiptFact.Corrected(7, "x", tagged)));
        assertEquals("There is no receipt R-2.", refusal(book, new ReceiptFact.Corrected(2, "x", tagged)));
    }

    @Test
    void whatLeftTheHouseIsNotSaidAnew() throws RefusedException {
        ReceiptBook book = book(unit("C16-004711"), new ReceiptFact.GivenBack(1, "the owner wants it back untested"));
        assertEquals(Optional.empty(), book.current("C16-004711"));
        assertTrue(refusal(book, new ReceiptFact.GivenBack(1, "again")).contains("the owner wants it back untested"));
        assertTrue(refusal(book, new ReceiptFact.Corrected(1, "x", unit("C16-004711"))).contains("left the house"));
    }

    @Test
    void aRepairTellsWhatWasDone() throws RefusedException {
        ReceiptFact.Repaired nothing = new ReceiptFact.Repaired("C16-004711", "T-4K7M2-QXD9R", " ", List.of(), List.of());
        assertTrue(refusal(ReceiptBook.empty(), nothing).contains("Nothing is said about what was done"));
        ReceiptFact.Repaired nameless = new ReceiptFact.Repaired("C16-004711", "T-4K7M2-QXD9R", "", List.of(new ReplacedPart(" ", "L7")), List.of());
        assertTrue(refusal(ReceiptBook.empty(), nameless).contains("A part needs a name"));
        ReceiptBook book = book(new ReceiptFact.Repaired("C16-004711", "T-4K7M2-QXD9R", "", List.of(new ReplacedPart("C12", "L7")), List.of()));
        assertEquals(1, book.repairsAfter("T-4K7M2-QXD9R").size());
        assertEquals(List.of(), book.repairsAfter("T-4K7M2-QXD9S"));
    }

    private static ReceiptEvent by(long number, String person, Role role, ReceiptFact fact) {
        return new ReceiptEvent(number, DAY.plusSeconds(number), new Actor(person, role), fact);
    }

    @Test
    void aFileIsWithdrawnOnceByOneWithTheRoleWhoEnteredNothingAboutIt() throws RefusedException {
        Digest face = Digest.of(new byte[] {1});
        KeptFile photo = new KeptFile(face, "face.jpg");
        ReceiptFact.Received said = unit("C16-004711");
        ReceiptFact.Received shown = new ReceiptFact.Received("", "", said.unit(), Plate.READ, said.family(), "", "", "", List.of(photo),
                Optional.empty());
        ReceiptFact.AttachmentWithdrawn away = new ReceiptFact.AttachmentWithdrawn(1, face, "a face can be seen");
        ReceiptBook book = ReceiptBook.empty().with(by(1, "QN", Role.TECHNICIAN, shown)).with(by(2, "HD", Role.TECHNICIAN, unit("C16-004712")))
                .with(by(3, "RB", Role.TECHNICIAN, new ReceiptFact.Repaired("C16-004711", "T-4K7M2-QXD9R", "fuse", List.of(), List.of(photo))))
                .with(by(4, "KM", Role.TECHNICIAN, new ReceiptFact.GivenBack(1, "wanted back")));
        assertEquals(List.of("1 R-1 face.jpg", "3 R-3 face.jpg"), book.attachments().stream()
                .map(each -> each.event() + " " + Receipt.name(each.about()) + " " + each.file().name()).toList());
        for (String hand : List.of("QN", "rb", "KM")) {
            assertTrue(withdrawal(book, by(5, hand, Role.AUDITOR, away)).contains("entered something about a receipt or repair"), hand);
        }
        assertTrue(withdrawal(book, by(5, "MJ", Role.ENGINEER, away)).startsWith("MJ may not withdraw attachments."));
        assertTrue(withdrawal(book, by(5, "MJ", Role.AUDITOR, new ReceiptFact.AttachmentWithdrawn(2, face, "x"))).startsWith("Event 2 of the book"));
        assertTrue(withdrawal(book, by(5, "MJ", Role.AUDITOR, new ReceiptFact.AttachmentWithdrawn(1, face, " "))).contains("reason"));
        ReceiptBook after = book.with(by(5, "HD", Role.SUPERVISOR, away));
        assertEquals(Optional.empty(), book.withdrawn(face), "what was before stays as it was");
        assertEquals("HD", after.withdrawn(face).orElseThrow().by().id());
        assertEquals(Set.of(face), after.withdrawn());
        ReceiptEvent again = by(6, "MJ", Role.AUDITOR, new ReceiptFact.AttachmentWithdrawn(3, face, "x"));
        assertEquals("This file was withdrawn by HD already.", withdrawal(after, again));
    }

    private static String withdrawal(ReceiptBook book, ReceiptEvent event) {
        return assertThrows(RefusedException.class, () -> book.with(event)).getMessage();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " C16-004711", "C16\u0000", "\u202e17400-61C", "C16-004711\n"})
    void aUnitIsNamedByAPlainText(String serial) {
        refusal(ReceiptBook.empty(), unit(serial));
    }

    @ParameterizedTest
    @ValueSource(strings = {"../plate.jpg", "a/b", "a\\b", "", "plate\u0007.jpg"})
    void aFileHasAPlainName(String name) {
        ReceiptFact.Received said = unit("C16-004711");
        refusal(ReceiptBook.empty(), new ReceiptFact.Received("", "", "C16-004711", Plate.READ, said.family(), "", "", "",
                List.of(new KeptFile(Digest.of(new byte[0]), name)), Optional.empty()));
    }

    @Test
    void textsHaveAnEnd() {
        refusal(ReceiptBook.empty(), new ReceiptFact.Received("o".repeat(201), "", "C16-004711", Plate.READ, Optional.empty(), "", "", "", List.of(),
                Optional.empty()));
        refusal(ReceiptBook.empty(), new ReceiptFact.Received("", "", "C16-004711", Plate.READ, Optional.empty(), "c".repeat(2001), "", "", List.of(),
                Optional.empty()));
    }

    @Test
    void whatDoesNotFitInAFoldIsToldAndChangesNothing() {
        List<String> objections = new ArrayList<>();
        ReceiptBook book = ReceiptBook.of(List.of(event(1, unit("C16-004711")), event(2, new ReceiptFact.GivenBack(5, "x"))),
                (event, words) -> objections.add(event.number() + ": " + words));
        assertEquals(List.of("2: There is no receipt R-5."), objections);
        assertEquals(1, book.receipts().size());
    }

    @Test
    void receiptsAreCalledByTheirNumber() {
        assertEquals(OptionalLong.of(17), Receipt.number(" r-17 "));
        assertEquals(OptionalLong.empty(), Receipt.number("R-0"));
        assertEquals(OptionalLong.empty(), Receipt.number("R-99999999999999999999"));
        assertEquals(OptionalLong.empty(), Receipt.number("17"));
    }
}
