package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.present.Auditing;
import org.benchwright.present.InstrumentDesk;
import org.benchwright.present.PeopleDesk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever refuses a deed, the password that was handed in for it is blanked out. */
class BlankedPasswordsTest extends OnABench {

    private interface Deed {
        void by(PeopleDesk.Signing who) throws Exception;
    }

    private static void blanks(Deed deed) {
        PeopleDesk.Signing who = new PeopleDesk.Signing("MJ", "a good password".toCharArray());
        assertThrows(Exception.class, () -> deed.by(who));
        assertTrue(new String(who.password()).isBlank(), "blanked out");
    }

    @ParameterizedTest
    @ValueSource(strings = {"amend", "amend without reason", "review", "hand over", "supersede", "recall", "void", "withdraw attachment", "withdraw file", "decide",
        "plan reviews", "end reviews"})
    void whereNothingWasWritten(String deed) {
        Auditing auditing = new Auditing(ledger(), clocks, ZoneOffset.UTC);
        String test = "T-4K7M2-QXD9R";
        blanks(Map.<String, Deed>ofEntries(Map.entry("amend", who -> auditing.amend(test, 4, "", "x", who)),
                Map.entry("amend without reason", who -> auditing.amend(test, 4, "1 V", "", who)),
                Map.entry("review", who -> auditing.review(test, false, "\u0007", who)), Map.entry("hand over", who -> auditing.handOver(test, "", who)),
                Map.entry("supersede", who -> auditing.supersede(test, test, "", who)), Map.entry("recall", who -> auditing.recall(test, "", who)),
                Map.entry("void", who -> auditing.voidRecord(test, "", who)),
                Map.entry("withdraw attachment", who -> auditing.withdrawAttachment(test, 4, "", who)),
                Map.entry("withdraw file", who -> auditing.withdrawFile("R-1", "face.jpg", "", who)),
                Map.entry("decide", who -> auditing.decide(test, 4, "fine", "", who)), Map.entry("plan reviews", who -> auditing.planReviews("2", "1.0", "", who)),
                Map.entry("end reviews", who -> auditing.endReviews("", who))).get(deed));
    }

    @Test
    void whereAnInstrumentCannotBeRead() {
        InstrumentDesk desk = new InstrumentDesk(ledger(), clocks, ZoneOffset.UTC);
        blanks(who -> desk.add(new InstrumentDesk.NewInstrument("M-17", "Meter", "", List.of("up to 60 V"), ""), Optional.of(who)));
        blanks(who -> desk.calibrated("M-17", "C-9", LocalDate.of(2026, 1, 10), Optional.empty(), List.of("up to 60 V"), Optional.of(who)));
        blanks(who -> desk.importList("asset\nM-1\n", Optional.of(who)));
        blanks(who -> desk.importList("asset,title\nM-1,Meter\n", Optional.of(who)));
    }

    @Test
    void whereThereIsNoLedger() {
        Path none = folder.resolve("none.ledger");
        blanks(who -> new InstrumentDesk(none, clocks, ZoneOffset.UTC).moved("M-17", "shelf", Optional.of(who)));
        blanks(who -> new PeopleDesk(none, clocks).grant(who, "TM", "auditor"));
        blanks(who -> new PeopleDesk(none, clocks).begin("LW", "L", List.of("king"), who.password()));
    }
}
