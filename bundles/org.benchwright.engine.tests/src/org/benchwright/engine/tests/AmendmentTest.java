package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import static org.benchwright.engine.tests.Parts.beginAgain;
import static org.benchwright.engine.tests.Parts.compare;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.faultLog;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.SoakStage;
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
    private final long volts = Signing.event(run, Observation.Measured.class, "volts");

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
        assertEquals(Observation.Measured.class, run.events().get((int) volts - 1).body().getClass(), "the first entry stays");
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
        Replay replay = amended(Signing.event(run, Observation.Measured.class, "again"), "24.48");
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
        long clean = Signing.event(run, Observation.Confirmed.class, "clean");
        assertEquals("\"perhaps\" is neither yes nor no.", signing.refusal("TH", new Amended(clean, "perhaps", "wrong")));
        Replay replay = amended(clean, "no");
        assertEquals(Optional.empty(), replay.verdict(), "a release would have been asked for");
    }

    @Test
    void whatIsNoEntryOrWasStruckIsNotCorrected() throws Exception {
        assertTrue(signing.refusal("TH", new Amended(1, "x", "wrong")).startsWith("Event 1 is no entry"));
        assertTrue(signing.refusal("TH", new Amended(999, "x", "wrong")).startsWith("Event 999 is no entry"));
        Walk walk = Walk.approved(Signing.plan()).until("look.damage").tell(new Observation.TextEntered("damage", "slip"));
        long slip = Signing.event(walk.run(), Observation.TextEntered.class, "damage");
        walk.tell(new Fact.Struck(slip));
        walk.until("end");
        String refusal = Signing.of(walk.run()).refusal("TH", new Amended(slip, "x", "wrong"));
        assertTrue(refusal.contains("was struck as a slip"), refusal);
    }

    @Test
    void aReadingOnceMoreAfterASlipIsReadInTheUnitOfItsStep() throws Exception {
        TestRun slipped = Signing.slipped().run();
        long once = slipped.holding().stream().filter(each -> each.body() instanceof Observation.Measured).findFirst().orElseThrow().sequence();
        Replay replay = Signing.of(slipped).does("TH", new Amended(once, "24.2", "wrong")).record().amendments().get(0).replay();
        assertEquals("24.2 V", replay.changes().get(0).now().numbers().orElseThrow().value());
    }

    private static final SoakStage.Gap GAP = new SoakStage.Gap(Duration.ofHours(2), beginAgain(1, undecided("Too long unwitnessed.")));

    /** Accepted after a soak of 72 h with five looks, one condition each, a comparison and a fault log. */
    private static TestRun soaked() {
        Walk walk = Walk.approved(PlanDraft.plan().stage("power_up", step("on", energise("supply"), compare("types", rejected("types")), faultLog("lines")))
                .soak("endurance", rejected("stopped"), rejected("stopped outside"), Optional.of(GAP)).build());
        for (int i = 0; i < 300 && !walk.run().ended(); i++) {
            if (walk.demand() instanceof Demand.Look look) {
                walk.after(look.begins() ? "1 min" : "24 h").tell(Answers.look(look.soak(), Observation.Sight.YES, true));
            } else {
                walk.good();
            }
        }
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        return walk.run();
    }

    private static long first(TestRun run, Class<? extends Fact> kind) {
        return run.events().stream().filter(each -> kind.isInstance(each.body())).mapToLong(TestEvent::sequence).findFirst().orElseThrow();
    }

    private static Signing amend(TestRun run, long event, String entry) throws Exception {
        return Signing.of(run).does("TH", new Amended(event, entry, "read from the photo"));
    }

    private static Replay replay(Signing signing) {
        return signing.record().amendments().get(0).replay();
    }

    @Test
    void aLookAmendedInsideTheConditionsLeavesEverything() throws Exception {
        TestRun run = soaked();
        long look = first(run, Observation.Looked.class);
        Signing signing = amend(run, look, "yes steady all the time; " + inside(run));
        assertEquals(new Replay(run.verdict(), true, List.of(), List.of()), replay(signing));
        assertEquals(Optional.empty(), signing.record().doubt());
        assertEquals("steady all the time", ((Observation.Looked) signing.record().corrections().get(look)).asSeen());
    }

    private static String inside(TestRun run) {
        return run.plan().stages().stream().filter(SoakStage.class::isInstance)
                .map(stage -> Answers.inside(((SoakStage) stage).conditions().get(0).limits()).toString()).findFirst().orElseThrow();
    }

    @Test
    void aLookAmendedToAStopWouldHaveRejectedTheUnit() throws Exception {
        TestRun run = soaked();
        Signing signing = amend(run, first(run, Observation.Looked.class) + 2, "no dark; " + inside(run));
        assertEquals(Optional.of(Verdict.REJECTED), replay(signing).verdict());
        assertFalse(replay(signing).followed());
        assertTrue(signing.record().doubt().orElseThrow().contains("it would have been rejected"));
    }

    /** The verdict stays, but nobody has decided on the departure that would have been noted. */
    @Test
    void aConditionAmendedToOutsideIsADepartureThatNobodyDecided() throws Exception {
        TestRun run = soaked();
        Signing signing = amend(run, first(run, Observation.Looked.class), "yes; 99 degC");
        assertEquals(run.verdict(), replay(signing).verdict());
        assertEquals(1, replay(signing).beside().size(), replay(signing).toString());
        String doubt = signing.record().doubt().orElseThrow();
        assertTrue(doubt.contains("99 degC") && doubt.contains("on which nobody has decided"), doubt);
        assertEquals(doubt, signing.refusal("TH", new RecordFact.HandedOver("the owner", Signing.TEST + "/2")));
    }

    @Test
    void comparedEntriesAreComparedAgain() throws Exception {
        TestRun run = soaked();
        long types = first(run, Observation.Compared.class);
        Signing signing = amend(run, types, "A8 rev 2; A8 rev 3");
        assertEquals(Optional.of(Verdict.REJECTED), replay(signing).verdict());
        assertEquals(Outcome.DOES_NOT_CONFORM, replay(signing).changes().get(0).now().outcome());
        assertEquals(Optional.empty(), amend(run, types, "A8 rev 2; A8 rev 2").record().doubt());
        assertTrue(Signing.of(run).refusal("TH", new Amended(types, "A8 rev 2", "x")).contains("is not two entries"));
        assertTrue(Signing.of(run).refusal("TH", new Amended(types, "A8;", "x")).contains("is not two entries"));
    }

    @Test
    void aFaultLogIsAmendedLineByLineOrToNone() throws Exception {
        TestRun run = soaked();
        long log = first(run, Observation.FaultLogEntered.class);
        Signing signing = amend(run, log, "E12 watchdog; E13");
        assertEquals(List.of(new Observation.FaultLine("E12", "watchdog"), new Observation.FaultLine("E13", "")),
                ((Observation.FaultLogEntered) signing.record().corrections().get(log)).lines());
        signing.does("TH", new Amended(log, "none", "the lines were of another unit"));
        assertEquals(List.of(), ((Observation.FaultLogEntered) signing.record().corrections().get(log)).lines());
    }

    @ParameterizedTest
    @CsvSource({"yes,is no look", "yes; 22 degC; 24 V,is no look", "perhaps; 22 degC,is neither yes nor no", "yes; warm,can't be read as a quantity",
        "yes; 22 V,can't be read as a quantity"})
    void whatIsNoLookIsRefused(String entry, String words) {
        TestRun run = soaked();
        String refusal = Signing.of(run).refusal("TH", new Amended(first(run, Observation.Looked.class), entry, "wrong"));
        assertTrue(refusal.contains(words), refusal);
    }

    /** Told once more without a correction, every test is what it was. */
    @Test
    void withoutACorrectionNothingChanges() throws Exception {
        for (Walk walk : List.of(Signing.good(), Signing.departed(), Signing.rejectedUnit())) {
            assertEquals(new Replay(walk.run().verdict(), true, List.of(), List.of()), Replay.of(walk.run(), Map.of()));
        }
    }
}
