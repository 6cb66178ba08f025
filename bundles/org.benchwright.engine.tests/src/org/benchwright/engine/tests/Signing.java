package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.measureAgain;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.text;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.Map;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.record.RecordEvent;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/** A sealed record about which people sign. */
final class Signing {

    static final String TEST = "T-4K7M2-QXD9R";
    /** Who may do what; QN, TM, AB and SV may have had a hand in the test. */
    static final Map<String, Set<Role>> PEOPLE = Map.of("LW", Set.of(Role.AUDITOR), "KM", Set.of(Role.AUDITOR), "QN", Set.of(Role.TECHNICIAN, Role.AUDITOR),
            "SV", Set.of(Role.SUPERVISOR, Role.AUDITOR), "RB", Set.of(Role.ENGINEER, Role.AUDITOR), "TH", Set.of(Role.TECHNICIAN), "NN", Set.of());

    private TestRecord record;
    private long sequence;

    private Signing(TestRun run, boolean drawn) {
        record = TestRecord.sealed(TEST, run, drawn);
        sequence = run.lastSequence() + 1;
    }

    static Signing of(TestRun run) {
        return new Signing(run, false);
    }

    /** About a record that was drawn for a review. */
    static Signing drawn(TestRun run) {
        return new Signing(run, true);
    }

    // ---- tests

    /** A note, a confirmation that SV releases, a reading that is decided simply, and one that is repeated while it is too close to call. */
    static Plan plan() {
        return PlanDraft.plan().stage("work", step("look", confirm("clean", releaseBy(Role.SUPERVISOR)), text("damage")),
                step("supply", energise("supply"), measure("volts", DecisionRule.SIMPLE, rejected("supply"), undecided("supply")),
                        measureAgain("again", 1, Combination.LAST, rejected("again"), undecided("again")))).build();
    }

    /** No departure, accepted. */
    static Walk good() {
        return Walk.approved(plan()).until("end");
    }

    /** An interruption and a release: two departures, accepted. */
    static Walk departed() {
        Walk walk = Walk.approved(plan()).until("look.clean").tell(new Observation.Confirmed("clean", false));
        walk.tell(new Fact.Released("clean", Walk.SUPERVISOR, true));
        return walk.interrupt("20 min").until("end");
    }

    /** Rejected at the supply. */
    static Walk rejectedUnit() {
        return Walk.approved(plan()).until("supply.volts").tell(Answers.volts("volts", "25.1")).until("end");
    }

    /** Accepted, 24.0 V; at first 24.4 V was entered, and that struck when the next step was open and its hazard read. */
    static Walk slipped() {
        Walk walk = Walk.approved(PlanDraft.plan().hazard("mains", SignalWord.DANGER)
                .stage("work", step("supply", measure("volts", DecisionRule.SIMPLE, rejected("supply"), undecided("supply"))),
                        Parts.withHazard("mains", step("next", confirm("ok")))).build());
        walk.until("supply.volts").tell(Answers.volts("volts", "24.4")).good().asks("next.ok");
        return walk.strike().asks("supply.volts").until("end");
    }

    /** Number of the event that holds such a fact. */
    static long event(TestRun run, Class<? extends Fact> kind, String check) {
        return run.events().stream().filter(each -> kind.isInstance(each.body()) && each.body().toString().contains("check=" + check + ","))
                .mapToLong(TestEvent::sequence).findFirst().orElseThrow();
    }

    // ---- signing

    Signing does(String person, RecordFact fact) throws RefusedException {
        record = record.with(event(person, fact));
        sequence++;
        return this;
    }

    private RecordEvent event(String person, RecordFact fact) {
        return new RecordEvent(sequence + 1, Instant.parse("2026-03-09T08:00:00Z").plusSeconds(sequence), person, PEOPLE.get(person), fact);
    }

    /** The refusal; nothing has changed then. */
    String refusal(String person, RecordFact fact) {
        TestRecord before = record;
        String words = assertThrows(RefusedException.class, () -> record.with(event(person, fact))).getMessage();
        assertEquals(before.standing(), record.standing());
        return words;
    }

    TestRecord record() {
        return record;
    }

    /** The number of the n-th deviation, from 0. */
    long deviation(int n) {
        return record.deviations().get(n).sequence();
    }
}
