package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.isolate;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Step;
import org.junit.jupiter.api.Test;

/** What is live is known at every moment. */
class SwitchingTest {

    private static final Move ONCE_MORE = goTo("a", "on", 1, rejected("dead"));

    private static Walk steps(Step... steps) {
        return Walk.open(PlanDraft.plan().stage("a", steps).build());
    }

    @Test
    void switchingIsConfirmedOneWayAndTheOther() {
        Walk walk = steps(step("on", energise("supply"), confirm("lit"), isolate("supply")), step("next", confirm("x")));
        walk.asks("on.supply.on");
        walk.refusal(new Fact.Switched("supply", false));
        walk.refusal(new Fact.Switched("load", true));
        walk.good().asks("on.lit");
        assertEquals(Set.of("supply"), walk.run().live());
        walk.good().asks("on.supply.off").good().asks("next.x");
        assertEquals(Set.of(), walk.run().live());
    }

    @Test
    void whatComesBeforeAMarkCountsAsLiveAtOnce() {
        Walk walk = steps(step("on", energise("load"), energise("supply"), mark("closed"), confirm("lit"))).asks("on.load.on").good();
        walk.asks("on.closed");
        assertEquals(Set.of("load", "supply"), walk.run().live());
    }

    @Test
    void aStepThatSwitchesOnWhatIsLiveAsksToSwitchItOffFirst() {
        Walk walk = steps(step("on", energise("supply"), confirm("lit", ONCE_MORE)));
        walk.good().tell(new Observation.Confirmed("lit", false)).asks("on.supply.off");
        assertEquals(1, walk.count(Derived.StepOpened.class));
        walk.good().asks("on.supply.on").good().asks("on.lit");
    }

    @Test
    void aStepThatSwitchesOffFirstByItselfIsNotAskedTwice() {
        Walk walk = steps(step("on", energise("supply"), confirm("lit")),
                step("cycle", isolate("supply"), confirm("dark"), energise("supply"), confirm("lit again")));
        walk.good().good().asks("cycle.supply.off").good().asks("cycle.dark").good().asks("cycle.supply.on").good().asks("cycle.lit again");
        assertEquals(Set.of("supply"), walk.run().live());
    }

    @Test
    void anItemOfAnotherNameIsLeftAlone() {
        Walk walk = steps(step("on", energise("supply"), confirm("x")), step("more", energise("load"), confirm("x")));
        walk.good().good().asks("more.load.on").good().asks("more.x");
        assertEquals(Set.of("supply", "load"), walk.run().live());
    }
}
