package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.present.HandingOver;
import org.benchwright.present.TestDialogue;
import org.benchwright.report.TestReport;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;

/** What soaks and measurements of real tests are said to prove, and that it is said alike everywhere. */
class SoakProofTest extends OnABench {

    private static final String ASSUMED = " Assumed: such a fault stops the unit at a constant rate. One that shows with age, with warmth or"
            + " when switched on is another matter.";

    private void answer(TestDialogue dialogue, String... answers) throws Exception {
        for (String answer : answers) {
            while (dialogue.waitsForTime()) {
                time.advance(dialogue.countdown().orElseThrow().left());
                dialogue.timeHasCome();
            }
            dialogue.answer(answer, folder);
        }
    }

    private TestDialogue onSoak(UnaryOperator<Plan> change, boolean rehearsal) throws Exception {
        Plan plan = change.apply(SamplePlan.acceptance());
        if (!rehearsal) {
            approve(plan);
        }
        TestDialogue dialogue = bench.begin(plan, SamplePlan.TEXT, work("C16-004711", "QN", rehearsal));
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01", "23.51", "too close to tell", "23.6", "", "u",
                "y", "u", "now", "y", "y", "y", "none", "a; a", "y", "y", "y, GW", "now", "y", "y; 22 degC; 24.0 V");
        return dialogue;
    }

    private TestDialogue onSoak() throws Exception {
        return onSoak(plan -> plan, false);
    }

    private void look(TestDialogue dialogue, Duration after, String entry) throws Exception {
        time.advance(after);
        answer(dialogue, entry);
    }

    private TestDialogue soaked(TestDialogue dialogue) throws Exception {
        for (int day = 0; day < 3; day++) {
            look(dialogue, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        }
        return dialogue;
    }

    private List<String> proved(TestDialogue dialogue) throws Exception {
        return bench.record(dialogue.test()).orElseThrow().proved();
    }

    private static UnaryOperator<Plan> claiming(Optional<Claim> claim) {
        return plan -> ChangedPlan.of(plan).claim(claim).plan();
    }

    private static Plan forgetting(Plan plan) {
        UnitFamily f = plan.family();
        return ChangedPlan.of(plan).family(new UnitFamily(f.name(), f.title(), f.supply(), f.serialMask(), f.lamps(), f.modes(), f.faults(), false)).plan();
    }

    @Test
    void threeDaysWithoutAStopAreSaidAlikeOnSheetCardCertificateAndRecord() throws Exception {
        TestDialogue dialogue = soaked(onSoak());
        answer(dialogue, "", "0.4");
        List<String> words = List.of("endurance: 72 h witnessed, 0 stops: would have revealed, with 90 % probability, any fault that stops a unit"
                + " at least once in 31 h on average. This supports what the procedure claims: 90 % for once in 31 h." + ASSUMED);
        assertEquals(words, dialogue.ending().orElseThrow().proved());
        assertEquals(words, proved(dialogue));
        assertEquals(words, HandingOver.of(ledger(), dialogue.test(), time.instant()).report().soaks());
    }

    @Test
    void hoursBeyondThePlannedOnesCountAndAClaimIsComparedAtItsOwnLevel() throws Exception {
        TestDialogue dialogue = onSoak(claiming(Optional.of(new Claim(Duration.ofHours(40), new BigDecimal("0.95")))), false);
        look(dialogue, Duration.ofHours(71), "y; 22 degC; 24.0 V");
        look(dialogue, Duration.ofHours(25), "y; 22 degC; 24.0 V");
        // 96 h / -ln 0.05 = 32.05 h
        assertEquals(List.of("endurance: 96 h witnessed, 0 stops: would have revealed, with 95 % probability, any fault that stops a unit at"
                + " least once in 32 h on average. This does not support what the procedure claims: 95 % for once in 40 h." + ASSUMED),
                proved(dialogue));
    }

    /** Somebody puts the wall clock forward by ten hours between two looks, and back by five after the next one. */
    @Test
    void aWallClockThatIsSetDoesNotStretchTheCourse() throws Exception {
        TestDialogue dialogue = onSoak();
        look(dialogue, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        time.stepWall(Duration.ofHours(10));
        look(dialogue, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        time.stepWall(Duration.ofHours(-5));
        look(dialogue, Duration.ofHours(23), "y; 22 degC; 24.0 V");
        List<List<String>> course = bench.record(dialogue.test()).orElseThrow().courses().get(0).tables().get(0).rows();
        assertEquals(List.of("0.0000", "24.0000", "48.0000", "71.0000"), course.stream().map(row -> row.get(0)).toList());
    }

    @Test
    void withoutAClaimTheSentenceIsAtNinetyPercent() throws Exception {
        TestDialogue dialogue = soaked(onSoak(claiming(Optional.empty()), false));
        assertTrue(proved(dialogue).get(0).contains("with 90 % probability") && !proved(dialogue).get(0).contains("claims"));
    }

    @Test
    void aStopGivesTheLimitsByOneFailureBetweenItsTwoLooks() throws Exception {
        TestDialogue dialogue = onSoak();
        look(dialogue, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        look(dialogue, Duration.ofHours(20), "n; 22 degC; 24.0 V");
        // 24 h / 2.9957 = 8.01 h and 44 h / 0.051293 = 857.8 h: chi-squared with 2 degrees of freedom at 95 % and 5 %, halved
        assertEquals(List.of("endurance: 1 stop, after between 24 h and 44 h of soak: with 90 % confidence the mean time between stops is 8 h to"
                + " 858 h. Assumed: stops come at a constant rate."), proved(dialogue));
    }

    @Test
    void aStopBeforeTheFirstLookHasNoLowerLimit() throws Exception {
        TestDialogue dialogue = onSoak();
        look(dialogue, Duration.ofHours(2), "n; 22 degC; 24.0 V");
        assertEquals(List.of("endurance: 1 stop, within 2 h of its beginning: with 90 % confidence the mean time between stops is at most 39 h."
                + " Assumed: stops come at a constant rate."), proved(dialogue));
    }

    @Test
    void byWhenItHadStoppedIsToldInWholeSecondsRoundedUp() throws Exception {
        TestDialogue dialogue = onSoak();
        look(dialogue, Duration.ofMillis(7_200_746), "n; 22 degC; 24.0 V");
        assertTrue(proved(dialogue).get(0).startsWith("endurance: 1 stop, within 2 h 1 s of its beginning:"), proved(dialogue).get(0));
    }

    @Test
    void aStopOutsideTheConditionsIsNotTheUnits() throws Exception {
        TestDialogue dialogue = onSoak();
        look(dialogue, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        look(dialogue, Duration.ofHours(20), "n; 35 degC; 24.0 V");
        assertEquals(List.of("endurance: it stopped after 24 h witnessed, while the conditions around it were outside their limits. That is not"
                + " charged to the unit, and nothing is claimed."), proved(dialogue));
    }

    @Test
    void whatWasCutShortOrNeverWitnessedClaimsNothing() throws Exception {
        TestDialogue going = onSoak();
        look(going, Duration.ofHours(24), "y; 22 degC; 24.0 V");
        assertEquals(List.of("endurance: under way, 24 h of 72 h witnessed; nothing is claimed before its end."), proved(going));
        going.makeSafe("smoke");
        assertEquals(List.of("endurance: cut short after 24 h witnessed of 72 h; nothing is claimed."), proved(going));
    }

    @Test
    void aFamilyWhoseStopDoesNotStayProvesNothingByLooks() throws Exception {
        TestDialogue dialogue = onSoak(SoakProofTest::forgetting, false);
        for (int look = 0; look < 72; look++) {
            look(dialogue, Duration.ofHours(1), "y; 22 degC; 24.0 V");
        }
        assertEquals(List.of("endurance: nothing is claimed. A unit of this family may stop and start again unseen between two looks, and"
                + " nothing watched it."), proved(dialogue));
    }

    @Test
    void aRehearsalSaysWhatATestWould() throws Exception {
        TestDialogue dialogue = onSoak(plan -> plan, true);
        while (!dialogue.key().startsWith("off")) {
            dialogue.pause(dialogue.countdown().orElseThrow().left());
            dialogue.answer("y; 22 degC; 24.0 V", folder);
        }
        assertEquals(List.of("endurance: rehearsed, its hours skipped: nothing is proved. In a test, 72 h without a stop would reveal, with"
                + " 90 % probability, any fault that stops a unit at least once in 31 h on average."), proved(dialogue));
    }

    @Test
    void eachMeasuredDecisionSaysHowSureItIs() throws Exception {
        TestDialogue dialogue = soaked(onSoak());
        answer(dialogue, "", "0.4");
        TestReport report = HandingOver.of(ledger(), dialogue.test(), time.instant()).report();
        List<TestReport.Numbers> measured = report.results().stream().flatMap(result -> result.numbers().stream()).toList();
        TestReport.Numbers first = measured.get(0);
        assertEquals("guarded both ways", first.rule());
        // 23.51 V, limit 23.5 V, u = 0.01 V: one standard uncertainty inside, 84.13 %; decided by the mean after one repeat
        assertEquals("84.13 %", first.certainty().orElseThrow().conformance());
        assertEquals("0.02 V", first.certainty().orElseThrow().guardBand());
        assertEquals("1 of at most 2", first.certainty().orElseThrow().readings());
        TestReport.Numbers second = measured.get(1);
        assertEquals("23.555 V", second.value());
        assertEquals("> 99.99 %", second.certainty().orElseThrow().conformance());
        assertEquals("2 of at most 2", second.certainty().orElseThrow().readings());
        double risk = Double.parseDouble(second.certainty().orElseThrow().falseAccept().replace(" %", ""));
        assertTrue(risk > 2.28 && risk < 10, "a repeat raises the 2.28 % of a single reading: " + risk);
        TestReport.Numbers residual = measured.get(2);
        assertEquals("simple", residual.rule());
        assertEquals("0 V", residual.certainty().orElseThrow().guardBand());
        assertEquals("50.00 %", residual.certainty().orElseThrow().falseAccept());
    }

    /** The simple rule at the end of the sample, in a plan that lets it be repeated all the same. */
    private static Plan repeatingInVain(Plan plan) {
        List<Step> steps = plan.makeSafe().steps().stream().map(step -> new Step(step.name(), step.instruction(), step.takes(), step.hazards(),
                step.reveals(), step.actions().stream().map(SoakProofTest::repeatingInVain).toList())).toList();
        return ChangedPlan.of(plan).makeSafe(new WorkStage(plan.makeSafe().name(), plan.makeSafe().title(), false, Optional.empty(), List.of(), steps)).plan();
    }

    private static Action repeatingInVain(Action action) {
        return action instanceof Action.Measure m ? new Action.Measure(m.id(), m.instrument(), m.unit(), m.limits(), m.rule(),
                Optional.of(new Action.Again(3, Combination.MEAN)), m.rejected(), m.undecided()) : action;
    }

    @Test
    void aRuleThatLeavesNothingUndecidedIsNotSaidToRepeat() throws Exception {
        TestDialogue dialogue = soaked(onSoak(SoakProofTest::repeatingInVain, false));
        answer(dialogue, "", "0.4");
        List<TestReport.Result> results = HandingOver.of(ledger(), dialogue.test(), time.instant()).report().results();
        TestReport.Numbers residual = results.get(results.size() - 1).numbers().orElseThrow();
        assertEquals("simple", residual.rule());
        assertEquals("1 of at most 1", residual.certainty().orElseThrow().readings());
    }
}
