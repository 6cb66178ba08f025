package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.attach;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.Deed;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.RecordFact.AttachmentWithdrawn;
import org.benchwright.engine.record.RecordFact.DepartureDecided;
import org.benchwright.engine.record.RecordFact.HandedOver;
import org.benchwright.engine.record.RecordFact.NonconformityDecided;
import org.benchwright.engine.record.RecordFact.Recalled;
import org.benchwright.engine.record.RecordFact.Reviewed;
import org.benchwright.engine.record.RecordFact.Superseded;
import org.benchwright.engine.record.RecordFact.Voided;
import org.benchwright.engine.record.Standing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** In which state a sealed record takes what, and where that leads. */
class RecordStatesTest {

    private static final String FIRST = Signing.TEST + "/1";

    private static DepartureDecided accepted(long event) {
        return new DepartureDecided(event, DepartureDecision.ACCEPTED, "The gap was short and cold.");
    }

    @Test
    void withoutADepartureItIsHandedOverAtOnceAndSupersededAfterwards() throws Exception {
        Signing signing = Signing.of(Signing.good().run());
        assertEquals(Standing.SEALED, signing.record().standing());
        assertEquals(Optional.empty(), signing.record().uncertified());
        assertTrue(signing.refusal("LW", new Superseded("T-22222-22222", "retested")).startsWith("Only a record that was handed over"));
        assertTrue(signing.refusal("LW", new Recalled("wrong supply")).contains("nothing to call back"));
        signing.does("TH", new HandedOver("Millbrook pumping station", FIRST));
        assertEquals(Standing.HANDED_OVER, signing.record().standing());
        assertTrue(signing.refusal("TH", new HandedOver("somebody else", FIRST)).contains("went to Millbrook pumping station already"));
        signing.does("LW", new Superseded("T-22222-22222", "retested after a repair"));
        assertEquals(Standing.SUPERSEDED, signing.record().standing());
        assertTrue(signing.refusal("LW", new Recalled("late")).startsWith("This record is superseded"));
        signing.does("LW", new Voided("the other test covers it"));
        assertEquals(Standing.VOID, signing.record().standing());
        assertTrue(signing.refusal("LW", new Voided("again")).startsWith("This record is void"));
    }

    @Test
    void nothingIsHandedOverBeforeEveryDepartureIsDecided() throws Exception {
        Signing signing = Signing.of(Signing.departed().run());
        assertEquals(List.of(DepartureKind.RELEASED, DepartureKind.INTERRUPTED),
                signing.record().deviations().stream().map(each -> each.departure().orElseThrow()).toList());
        assertEquals(Standing.WAITING, signing.record().standing());
        String refusal = signing.refusal("TH", new HandedOver("the owner", FIRST));
        assertTrue(refusal.startsWith("2 to decide first. An auditor who had no hand in the test decides departure " + signing.deviation(0)), refusal);
        assertEquals(Optional.of(refusal), signing.record().uncertified());
        signing.does("LW", accepted(signing.deviation(1)));
        assertTrue(signing.refusal("KM", accepted(signing.deviation(1))).contains("was decided by LW already: accepted"));
        assertTrue(signing.refusal("LW", new Reviewed(true, "")).startsWith("1 to decide first"));
        signing.does("LW", accepted(signing.deviation(0)));
        assertEquals(Standing.DECIDED, signing.record().standing());
        assertEquals("accepted", signing.record().decision(signing.deviation(0)).orElseThrow().word());
        assertTrue(signing.refusal("LW", accepted(signing.deviation(0))).startsWith("Everything of that kind"));
        signing.does("KM", new Reviewed(true, "")).does("TH", new HandedOver("the owner", FIRST));
        assertEquals(Standing.HANDED_OVER, signing.record().standing());
    }

    @Test
    void whatWasDrawnIsReviewedBeforeItGoesOutAndAgainAfterAnAmendment() throws Exception {
        Signing signing = Signing.drawn(Signing.good().run());
        assertEquals(Standing.REVIEW_DUE, signing.record().standing());
        assertTrue(signing.record().reviewDue());
        String refusal = signing.refusal("TH", new HandedOver("the owner", FIRST));
        assertTrue(refusal.startsWith("This record was drawn for a review"), refusal);
        assertEquals(Optional.of(refusal), signing.record().uncertified());
        assertTrue(signing.refusal("QN", new Reviewed(true, "")).contains("had a hand in this test"));
        signing.does("LW", new Reviewed(true, ""));
        assertEquals(Standing.REVIEWED, signing.record().standing());
        assertEquals(Optional.empty(), signing.record().uncertified());
        signing.does("TH", new HandedOver("the owner", FIRST));
        signing.does("TH", new RecordFact.Amended(Signing.event(signing.record().run(), Observation.TextEntered.class, "damage"), "dented",
                "seen later"));
        assertTrue(signing.record().reviewDue());
        assertEquals(Standing.HANDED_OVER, signing.record().standing());
        assertEquals(refusal, signing.refusal("TH", new HandedOver("the owner", Signing.TEST + "/2")));
        signing.does("LW", new Reviewed(true, "")).does("TH", new HandedOver("the owner", Signing.TEST + "/2"));
    }

    @Test
    void whatWasDrawnWaitsForItsDecisionsFirstAndMayBeVoid() throws Exception {
        Signing signing = Signing.drawn(Signing.departed().run());
        assertEquals(Standing.WAITING, signing.record().standing());
        assertEquals(false, signing.record().reviewDue());
        signing.does("LW", accepted(signing.deviation(0))).does("LW", accepted(signing.deviation(1)));
        assertEquals(Standing.REVIEW_DUE, signing.record().standing());
        assertTrue(signing.refusal("LW", new Reviewed(true, "")).contains("A review takes another auditor"));
        signing.does("SV", new Voided("wrong unit"));
        assertEquals(false, signing.record().reviewDue());
    }

    private static final Digest PLATE = Digest.of(new byte[] {1});

    private static TestRun withPhotos() {
        Walk walk = Walk.approved(PlanDraft.plan().stage("received", step("plate", attach("front"), attach("back"))).build());
        for (int i = 0; i < 200 && !walk.run().ended(); i++) {
            if (walk.demand() instanceof Demand.AttachFile file) {
                walk.tell(new Observation.Attached(file.attach().id(), PLATE, "plate.jpg"));
            } else {
                walk.good();
            }
        }
        return walk.run();
    }

    @Test
    void aPersonalAttachmentIsWithdrawnOnceByWhoHadNoHandInItWhateverBecameOfTheRecord() throws Exception {
        TestRun run = withPhotos();
        Signing signing = Signing.of(run);
        long front = signing.record().attachments().get(0).event();
        assertTrue(signing.refusal("QN", new AttachmentWithdrawn(front, PLATE, "a face")).contains("QN had a hand in this test"));
        assertTrue(signing.refusal("TH", new AttachmentWithdrawn(front, PLATE, "a face")).contains("TH may not withdraw attachments"));
        assertTrue(signing.refusal("LW", new AttachmentWithdrawn(front, PLATE, " ")).contains("A reason is needed"));
        assertTrue(signing.refusal("LW", new AttachmentWithdrawn(1, PLATE, "a face")).contains("Event 1 of this test attached nothing"));
        assertTrue(signing.refusal("LW", new AttachmentWithdrawn(front, Digest.of(new byte[] {2}), "a face")).contains("attached nothing of the kind"));
        signing.does("SV", new Voided("wrong unit"));
        signing.does("LW", new AttachmentWithdrawn(front, PLATE, "a face"));
        assertEquals(Standing.VOID, signing.record().standing());
        assertEquals("LW", signing.record().withdrawn(front).orElseThrow().person());
        long back = signing.record().attachments().get(1).event();
        assertEquals(signing.record().withdrawn(front), signing.record().withdrawn(back), "the same bytes, attached twice");
        assertTrue(signing.refusal("LW", new AttachmentWithdrawn(front, PLATE, "again")).contains("no attachment in this test that could be withdrawn"));
        assertTrue(Signing.of(Signing.good().run()).refusal("LW", new AttachmentWithdrawn(2, PLATE, "a face")).contains("There is no attachment"));
    }

    @Test
    void aTestToBeRepeatedIsNotHandedOverButSuperseded() throws Exception {
        Signing signing = Signing.of(Signing.departed().run());
        signing.does("LW", new DepartureDecided(signing.deviation(0), DepartureDecision.REPEAT, "released without need"));
        assertEquals(Standing.WAITING, signing.record().standing());
        signing.does("LW", accepted(signing.deviation(1)));
        assertEquals(Standing.TO_REPEAT, signing.record().standing());
        assertTrue(signing.refusal("TH", new HandedOver("the owner", FIRST)).startsWith("It was decided that this test is to be repeated"));
        assertTrue(signing.record().uncertified().isPresent());
        signing.does("SV", new Superseded("T-22222-22222", "the repeated test"));
        assertEquals(Standing.SUPERSEDED, signing.record().standing());
    }

    @Test
    void oneDepartureThatVoidsTheTestIsEnough() throws Exception {
        Signing signing = Signing.of(Signing.departed().run());
        signing.does("LW", new DepartureDecided(signing.deviation(0), DepartureDecision.VOID, "nobody looked"));
        assertEquals(Standing.VOID, signing.record().standing());
        assertTrue(signing.refusal("LW", accepted(signing.deviation(1))).startsWith("This record is void"));
    }

    @Test
    void aNonconformityNeedsADispositionOfItsOwnKind() throws Exception {
        Signing signing = Signing.of(Signing.rejectedUnit().run());
        Deviation only = signing.record().deviations().get(0);
        assertTrue(only.nonconformity());
        assertEquals("work", only.stage());
        assertEquals("supply", only.step());
        assertTrue(signing.refusal("TH", new HandedOver("the owner", FIRST)).contains("says what becomes of the unit"));
        assertTrue(signing.refusal("LW", accepted(only.sequence())).startsWith("There is no departure"));
        assertTrue(signing.refusal("LW", new NonconformityDecided(1, Disposition.SCRAP, "dead")).startsWith("Event 1 of this test is no nonconformity"));
        assertTrue(signing.refusal("LW", new NonconformityDecided(only.sequence(), Disposition.SCRAP, " ")).startsWith("A reason"));
        signing.does("LW", new NonconformityDecided(only.sequence(), Disposition.RETURN_TO_OWNER, "not worth a repair"));
        assertEquals("return to owner", signing.record().decision(only.sequence()).orElseThrow().word());
        signing.does("TH", new HandedOver("the owner", FIRST));
    }

    @Test
    void aReviewThatDidNotAgreeStopsTheHandOver() throws Exception {
        Signing signing = Signing.of(Signing.good().run());
        assertTrue(signing.refusal("LW", new Reviewed(false, " ")).startsWith("Say what is wrong"));
        signing.does("LW", new Reviewed(false, "the damage is not told"));
        assertEquals(Standing.OBJECTED, signing.record().standing());
        assertTrue(signing.refusal("TH", new HandedOver("the owner", FIRST)).contains("did not agree: the damage is not told"));
        assertTrue(signing.refusal("KM", new Reviewed(true, "")).startsWith("It was reviewed by LW"));
        long text = Signing.event(signing.record().run(), Observation.TextEntered.class, "damage");
        signing.does("TH", new RecordFact.Amended(text, "left foot bent", "was overlooked")).does("KM", new Reviewed(true, ""));
        assertEquals(Standing.REVIEWED, signing.record().standing());
        signing.does("TH", new HandedOver("the owner", Signing.TEST + "/2"));
    }

    @Test
    void whatWasAmendedAfterItWentOutIsHandedOverAgainWithTheNextNumber() throws Exception {
        Signing signing = Signing.of(Signing.good().run()).does("TH", new HandedOver("the owner", FIRST));
        long text = Signing.event(signing.record().run(), Observation.TextEntered.class, "damage");
        signing.does("TH", new RecordFact.Amended(text, "left foot bent", "was overlooked"));
        assertEquals(Signing.TEST + "/2", signing.record().number());
        assertTrue(signing.refusal("TH", new HandedOver("the owner", FIRST)).contains("is not the one that holds"));
        signing.does("KM", new Reviewed(false, "which foot?"));
        assertTrue(signing.refusal("TH", new HandedOver("the owner", Signing.TEST + "/2")).contains("which foot?"));
        signing.does("TH", new RecordFact.Amended(text, "front left foot bent", "asked for")).does("TH", new HandedOver("the owner", Signing.TEST + "/3"));
        assertEquals(3, signing.record().issue());
        signing.does("LW", new Recalled("the meter was wrong"));
        assertEquals(Standing.RECALLED, signing.record().standing());
    }

    @ParameterizedTest
    @EnumSource(value = Deed.class, mode = EnumSource.Mode.EXCLUDE, names = "WITHDRAW")
    void aRehearsalTakesNoneOfIt(Deed deed) {
        Walk walk = Walk.rehearse(Signing.plan()).until("supply.volts").tell(Answers.volts("volts", "25.1"));
        walk.until("end");
        Signing signing = Signing.of(walk.run());
        assertTrue(signing.record().objection(deed).orElseThrow().startsWith("A rehearsal tests no unit"));
        assertEquals(List.of(), signing.record().deviations());
    }

    @Test
    void whatFollowedFromASlipIsNoDeparture() throws Exception {
        Walk walk = Walk.approved(Signing.plan()).until("instrument.meter");
        Fact late = new Observation.InstrumentNamed("meter", "M-9", Optional.of(Quantity.of("0.02", "V")), BigDecimal.valueOf(2),
                Optional.of(LocalDate.of(2020, 1, 1)));
        walk.tell(late);
        assertEquals(1, Deviation.of(walk.run()).size());
        walk.strike();
        assertEquals(List.of(), Deviation.of(walk.run()));
        walk.until("end");
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        assertEquals(Standing.SEALED, Signing.of(walk.run()).record().standing());
    }
}
