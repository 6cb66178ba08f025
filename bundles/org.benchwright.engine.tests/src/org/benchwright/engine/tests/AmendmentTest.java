package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.record.Amendment;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.RecordFact.Amended;
import org.benchwright.engine.record.Replay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is amended is decided again by the rules of the plan, and shown beside what is on record. */
class AmendmentTest {

    private final TestRun run = Signing.good().run();
    private final Signing signing = Signing.of(run);
    private final long volts = Signing.event(run, Fact.Measured.class, "volts");

    private Replay amended(long event, String entry) throws Exception {
        signing.does("TH", new Amended(event, entry, "read from the photo"));
        List<Amendment> amendments = signing.record().amendments();
        return amendments.get(amendments.size() - 1).replay();
    }

    @Test
    void aReadingInsideTheLimitsLeavesTheVerdictAndShowsTheNewMargin() throws Exception {
        Replay replay = amended(volts, "24,1 V");
        assertEquals(Optional.of(Verdict.ACCEPTED), replay.verdict());
        assertTrue(replay.followed());
        assertEquals(1, replay.changes().size());
        assertEquals("24.1 V", replay.changes().get(0).now().numbers().orElseThrow().value());
        assertEquals("24.0 V", replay.changes().get(0).then().orElseThrow().numbers().orElseThrow().value());
        assertEquals(Optional.empty(), signing.record().doubt());
        assertEquals(Fact.Measured.class, run.events().get((int) volts - 1).body().getClass(), "the first entry stays");
    }

    @Test
    void aReadingOutsideDoubtsTheVerdictAndNothingIsHandedOver() throws Exception {
        Replay replay = amended(volts, "25.1");
        assertEquals(Optional.of(Verdict.REJECTED), replay.verdict());
        assertFalse(replay.followed());
        assertEquals(Outcome.DOES_NOT_CONFORM, replay.changes().get(0).now().outcome());
        String doubt = signing.record().doubt().orElseThrow();
        assertTrue(doubt.startsWith("The verdict is accepted, but with what was amended it would have been rejected."), doubt);
        assertEquals(doubt, signing.refusal("TH", new RecordFact.HandedOver("the owner", Signing.TEST + "/2")));
        assertEquals(Optional.of(doubt), signing.record().uncertified());
        amended(volts, "24.2");
        assertEquals(Optional.empty(), signing.record().doubt(), "an amendment is amended");
    }

    @Test
    void whereNobodyCanTellTheWayOnTheVerdictIsInDoubtToo() throws Exception {
        Replay replay = amended(Signing.event(run, Fact.Measured.class, "again"), "24.48");
        assertEquals(Optional.empty(), replay.verdict());
        assertTrue(signing.record().doubt().orElseThrow().contains("nobody can tell where to"));
    }

    @ParameterizedTest
    @CsvSource({"12 mA,can't be read as a quantity", "x,can't be read as a quantity", "24.0 V,That is what event", "' ',What is right"})
    void whatCannotBeReadOrIsNothingNewIsRefused(String entry, String words) {
        String refusal = signing.refusal("TH", new Amended(volts, entry, "wrong"));
        assertTrue(refusal.contains(words), refusal);
    }

    @Test
    void answersAreYesOrNo() throws Exception {
        long clean = Signing.event(run, Fact.Confirmed.class, "clean");
        assertEquals("\"perhaps\" is neither yes nor no.", signing.refusal("TH", new Amended(clean, "perhaps", "wrong")));
        Replay replay = amended(clean, "no");
        assertEquals(Optional.empty(), replay.verdict(), "a release would have been asked for");
    }

    @Test
    void whatIsNoEntryOrWasStruckIsNotCorrected() throws Exception {
        assertTrue(signing.refusal("TH", new Amended(1, "x", "wrong")).startsWith("Event 1 is no entry"));
        assertTrue(signing.refusal("TH", new Amended(999, "x", "wrong")).startsWith("Event 999 is no entry"));
        Walk walk = Walk.approved(Signing.plan()).until("look.damage").tell(new Fact.TextEntered("damage", "slip"));
        long slip = Signing.event(walk.run(), Fact.TextEntered.class, "damage");
        walk.tell(new Fact.Struck(slip));
        while (!walk.run().ended()) {
            walk.good();
        }
        String refusal = Signing.of(walk.run()).refusal("TH", new Amended(slip, "x", "wrong"));
        assertTrue(refusal.contains("was struck as a slip"), refusal);
    }

    /** Told once more without a correction, every test is what it was. */
    @Test
    void withoutACorrectionNothingChanges() throws Exception {
        for (Walk walk : List.of(Signing.good(), Signing.departed(), Signing.rejectedUnit())) {
            assertEquals(new Replay(walk.run().verdict(), true, List.of()), Replay.of(walk.run(), Map.of()));
        }
    }
}
