package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Plan;
import org.junit.jupiter.api.Test;

/** A rehearsal derives no verdict. */
class RehearsalTest {

    private static final Plan PLAN = PlanDraft.plan().stage("a", step("a1", confirm("x", rejected("bad")))).build();

    @Test
    void itSaysWhatWouldHaveBeen() {
        Walk walk = Walk.rehearse(PLAN).good().good().asks("end");
        assertEquals(Optional.empty(), walk.run().verdict());
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().wouldBe());
        assertEquals(0, walk.count(Derived.Concluded.class));
        assertEquals(new Demand.Nothing(Verdict.ACCEPTED, "Every step conforms.", true), walk.demand());
        assertTrue(walk.run().ended());
    }

    @Test
    void itIsMadeSafeAllTheSame() {
        Walk walk = Walk.rehearse(PLAN).tell(new Observation.Confirmed("x", false)).asks("off.supply.off").good();
        assertEquals(new Derived.RehearsalEnded(Verdict.REJECTED, "bad"), walk.last(Derived.RehearsalEnded.class));
        assertEquals(1, walk.count(Derived.MadeSafe.class));
    }

    @Test
    void aTestHasNoWouldBe() {
        Walk walk = Walk.open(PLAN).good().good();
        assertEquals(Optional.empty(), walk.run().wouldBe());
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
    }
}
