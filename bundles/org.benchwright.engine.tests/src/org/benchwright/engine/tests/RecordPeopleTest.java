package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.RecordFact.DepartureDecided;
import org.benchwright.engine.record.RecordFact.Reviewed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who may do what to a sealed record: roles, and hands that are kept apart. */
class RecordPeopleTest {

    private static final DepartureDecision ACCEPTED = DepartureDecision.ACCEPTED;

    @ParameterizedTest
    @CsvSource({"QN,QN had a hand in this test", "SV,SV had a hand in this test", "RB,RB prepared the revision", "TH,TH may not decide on departures",
        "NN,NN may not decide on departures"})
    void whoDecidesIsAnAuditorWithoutAHandInIt(String person, String words) {
        Signing signing = Signing.of(Signing.departed().run());
        String refusal = signing.refusal(person, new DepartureDecided(signing.deviation(0), ACCEPTED, "fine"));
        assertTrue(refusal.startsWith(words), refusal);
    }

    /** Initials are typed by hand at the bench. */
    @Test
    void smallLettersDoNotMakeAnotherPerson() {
        Walk walk = Walk.approved(Signing.plan()).until("look.clean");
        walk.tell(new Fact.Noted("looked in"), new Actor("lw", Role.TECHNICIAN));
        walk.tell(new Observation.Confirmed("clean", false)).tell(new Fact.Released("clean", Walk.SUPERVISOR, true));
        walk.until("end");
        Signing signing = Signing.of(walk.run());
        assertTrue(signing.refusal("LW", new DepartureDecided(signing.deviation(0), ACCEPTED, "fine")).contains("had a hand"));
    }

    @ParameterizedTest
    @CsvSource({"QN,QN had a hand", "RB,RB prepared", "TH,TH may not review"})
    void whoReviewsHadNoHandInItEither(String person, String words) {
        String refusal = Signing.of(Signing.good().run()).refusal(person, new Reviewed(true, ""));
        assertTrue(refusal.startsWith(words), refusal);
    }

    @Test
    void aReviewIsBySomebodyElseThanTheDecisions() throws Exception {
        Signing signing = Signing.of(Signing.departed().run());
        signing.does("LW", new DepartureDecided(signing.deviation(0), ACCEPTED, "fine"));
        signing.does("LW", new DepartureDecided(signing.deviation(1), ACCEPTED, "fine"));
        assertTrue(signing.refusal("LW", new Reviewed(true, "")).contains("A review takes another auditor"));
        signing.does("KM", new Reviewed(true, ""));
    }

    @Test
    void whoAmendsDecidesAndReviewsNothing() throws Exception {
        Signing signing = Signing.of(Signing.departed().run());
        long text = Signing.event(signing.record().run(), Observation.TextEntered.class, "damage");
        signing.does("LW", new RecordFact.Amended(text, "left foot bent", "was overlooked"));
        assertTrue(signing.refusal("LW", new DepartureDecided(signing.deviation(0), ACCEPTED, "fine")).startsWith("LW amended this record"));
        signing.does("KM", new DepartureDecided(signing.deviation(0), ACCEPTED, "fine"));
        signing.does("KM", new DepartureDecided(signing.deviation(1), ACCEPTED, "fine"));
        assertTrue(signing.refusal("LW", new Reviewed(true, "")).startsWith("LW amended this record"));
    }

    @Test
    void everyDeedSaysWhoMay() {
        Signing signing = Signing.of(Signing.good().run());
        assertEquals("NN may not amend records. It takes somebody with one of the roles: technician, engineer, supervisor, auditor.",
                signing.refusal("NN", new RecordFact.Amended(1, "x", "y")));
        assertTrue(signing.refusal("NN", new RecordFact.HandedOver("x", "y")).startsWith("NN may not hand units over"));
        assertTrue(signing.refusal("TH", new RecordFact.Voided("x")).startsWith("TH may not void records"));
    }
}
