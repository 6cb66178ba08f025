package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.release;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.junit.jupiter.api.Test;

/** Nobody goes on without a release, and nobody releases their own work. */
class ReleaseTest {

    private static Walk upTo(Role by) {
        return Walk.open(PlanDraft.plan().stage("a", step("before", confirm("x")), step("start", release("bare", by, rejected("not bare"))),
                step("after", confirm("x"))).build());
    }

    private static Fact by(String id, Role role, boolean given) {
        return new Fact.Released("bare", new Actor(id, role), given);
    }

    @Test
    void aSecondPersonReleases() {
        Walk walk = upTo(Role.SECOND_PERSON).good().tell(by("AB", Role.SECOND_PERSON, true)).asks("after.x");
        assertEquals("released by AB", walk.last(Derived.CheckDecided.class).words());
        assertEquals(Outcome.CONFORMS, walk.last(Derived.StepDecided.class).outcome());
    }

    @Test
    void aRefusalLeadsWhereThePlanSays() {
        Walk walk = upTo(Role.SECOND_PERSON).good().tell(by("AB", Role.SECOND_PERSON, false)).asks("off.supply.off");
        assertEquals("not bare", walk.run().reason());
    }

    @Test
    void theTechnicianDoesNotRelease() {
        Walk walk = upTo(Role.SECOND_PERSON).good();
        assertEquals("QN works on this test, so somebody else has to release it.", walk.refusal(by("QN", Role.SECOND_PERSON, true)));
        walk.refusal(by("qn", Role.SECOND_PERSON, true));
        walk.refusal(by("AB", Role.TECHNICIAN, true));
        assertEquals("This takes a release by a second person.", walk.refusal(by("RB", Role.ENGINEER, true)));
    }

    @Test
    void everybodyWhoWorkedOnTheTestIsExcluded() {
        Walk walk = upTo(Role.SECOND_PERSON).tell(new Observation.Confirmed("x", true), Walk.OTHER_TECHNICIAN);
        walk.refusal(by("TM", Role.SECOND_PERSON, true));
        walk.refusal(by("QN", Role.SECOND_PERSON, true));
        walk.refusal(by("TM", Role.SUPERVISOR, true));
    }

    @Test
    void aNoteIsNoWork() {
        upTo(Role.SECOND_PERSON).tell(new Fact.Noted("Looked in."), new Actor("AB", Role.TECHNICIAN)).good().tell(by("AB", Role.SECOND_PERSON, true)).asks("after.x");
    }

    @Test
    void aSupervisorReleasesForASecondPersonButNotTheOtherWayRound() {
        upTo(Role.SECOND_PERSON).good().tell(by("SV", Role.SUPERVISOR, true)).asks("after.x");
        Walk walk = upTo(Role.SUPERVISOR).good();
        assertEquals("This takes a release by a supervisor.", walk.refusal(by("AB", Role.SECOND_PERSON, true)));
        walk.tell(by("SV", Role.SUPERVISOR, true)).asks("after.x");
    }

    @Test
    void whoReleasedDoesNotWorkOnButMayMakeSafe() {
        Walk walk = upTo(Role.SECOND_PERSON).good().tell(by("AB", Role.SECOND_PERSON, true)).asks("after.x");
        Actor turned = new Actor("ab", Role.TECHNICIAN);
        assertEquals("ab released something in this test, so somebody else has to carry it out.",
                walk.refusal(new Observation.Confirmed("x", true), turned));
        walk.tell(new Fact.Noted("Looked in."), turned);
        walk.tell(new Fact.Abandoned("QN was called away."), turned).tell(new Fact.Switched("supply", false), turned).asks("end");
    }
}
