package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.branch;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Questions whose answer tells how the test goes on, and accuses nobody. */
class BranchTest {

    private static final Optional<String> ASKED_ANEW = Optional.empty();
    private static final Optional<String> REMEMBERED = Optional.of("fan");

    private static Observation.Confirmed fitted(boolean yes) {
        return new Observation.Confirmed("fan", yes);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void oneAnswerPassesOverTheRestOfTheStepAndTheOtherGoesOn(boolean when) {
        PlanDraft draft = PlanDraft.plan().stage("a", step("look", branch("fan", when, Optional.empty(), ASKED_ANEW), confirm("turns")),
                step("next", confirm("x")));
        Walk.open(draft.build()).asks("look.fan").tell(fitted(when)).asks("next.x");
        Walk.open(draft.build()).asks("look.fan").tell(fitted(!when)).asks("look.turns").good().asks("next.x");
    }

    @Test
    void neitherAnswerIsAFault() {
        for (boolean yes : List.of(true, false)) {
            Walk walk = Walk.open(PlanDraft.plan().stage("a", step("look", branch("fan", true, Optional.empty(), ASKED_ANEW), confirm("turns"))).build());
            walk.tell(fitted(yes));
            Derived.CheckDecided decided = walk.last(Derived.CheckDecided.class);
            assertEquals(Outcome.CONFORMS, decided.outcome());
            assertEquals(yes ? "so it is: The fan tray is fitted." : "not so: The fan tray is fitted.", decided.words());
            walk.until("end");
            assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
            assertEquals(List.of(), walk.departures());
        }
    }

    @Test
    void anAnswerMayLeadElsewhere() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("look", branch("fan", false, Optional.of(goTo("b", "b1")), ASKED_ANEW), confirm("turns")))
                .stage("b", step("b1", confirm("x"))).build());
        walk.tell(fitted(false)).asks("b1.x");
        assertEquals(Outcome.CONFORMS, walk.last(Derived.StepDecided.class).outcome());
    }

    @Test
    void anAnswerThatHoldsForTheWholeTestIsAskedForOnceAndAnotherEachTime() {
        Walk once = Walk.open(PlanDraft.plan().stage("a", step("look", branch("fan", true, Optional.empty(), REMEMBERED), confirm("turns")),
                step("again", branch("tray", true, Optional.empty(), REMEMBERED), confirm("quiet")), step("next", confirm("x"))).build());
        once.tell(fitted(true)).asks("next.x");
        List<String> onRecord = once.all(Derived.CheckDecided.class).stream().map(Derived.CheckDecided::check).toList();
        assertEquals(List.of("fan", "tray"), onRecord);
        Walk each = Walk.open(PlanDraft.plan().stage("a", step("look", branch("fan", true, Optional.empty(), ASKED_ANEW), confirm("turns")),
                step("again", branch("tray", true, Optional.empty(), ASKED_ANEW), confirm("quiet"))).build());
        each.tell(fitted(true)).asks("again.tray");
    }

    @Test
    void anAnswerThatWasASlipIsRememberedNoMore() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("look", branch("fan", true, Optional.empty(), REMEMBERED), confirm("turns")),
                step("again", branch("tray", true, Optional.empty(), REMEMBERED), confirm("quiet"))).build());
        walk.tell(fitted(true)).asks("off.supply.off").strike().asks("look.fan");
        walk.tell(fitted(false)).asks("look.turns").good().asks("again.quiet");
    }
}
