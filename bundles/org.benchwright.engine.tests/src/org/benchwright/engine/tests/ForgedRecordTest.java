package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.pause;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A record that somebody has changed does not follow from its own facts any more. */
class ForgedRecordTest {

    private static final Plan PLAN = PlanDraft.plan().stage("a",
            step("supply", energise("supply"), measure("v", DecisionRule.SIMPLE, rejected("The supply is bad."), undecided("x")),
                    pause("warm", "5 min")),
            step("check", confirm("runs", rejected("stopped")))).build();

    /** The unit fails its measurement. */
    private static List<TestEvent> rejectedRecord() {
        return Walk.open(PLAN).until("supply.v").tell(Answers.volts("v", "25.1")).until("end").run().events();
    }

    private static List<TestEvent> acceptedRecord() {
        return Walk.open(PLAN).until("end").run().events();
    }

    private static int indexOf(List<TestEvent> events, Class<?> kind) {
        return events.stream().map(e -> kind.isInstance(e.body())).toList().indexOf(true);
    }

    private static TestEvent with(TestEvent event, EventBody body) {
        return new TestEvent(event.sequence(), event.moment(), event.actor(), body);
    }

    /** The sequence numbers made right again, as a forger would. */
    private static List<TestEvent> renumbered(List<TestEvent> events) {
        List<TestEvent> right = new ArrayList<>();
        for (TestEvent e : events) {
            right.add(new TestEvent(right.size() + 1, e.moment(), e.actor(), e.body()));
        }
        return right;
    }

    private static DoesNotFollowException fault(List<TestEvent> events) {
        return assertThrows(DoesNotFollowException.class, () -> TestRun.fold(PLAN, events));
    }

    private static void faultAt(int index, List<TestEvent> events) {
        assertEquals(index + 1, fault(events).sequence());
    }

    @Test
    void anUnchangedRecordFolds() {
        assertDoesNotThrow(() -> TestRun.fold(PLAN, rejectedRecord()));
        assertDoesNotThrow(() -> TestRun.fold(PLAN, acceptedRecord()));
    }

    @Test
    void aChangedVerdictIsFound() {
        List<TestEvent> events = new ArrayList<>(rejectedRecord());
        int last = events.size() - 1;
        assertEquals(new Derived.Concluded(Verdict.REJECTED, "The supply is bad."), events.get(last).body());
        events.set(last, with(events.get(last), new Derived.Concluded(Verdict.ACCEPTED, "Every step conforms.")));
        faultAt(last, events);
        assertTrue(fault(events).getMessage().contains("Concluded[verdict=REJECTED"), fault(events).getMessage());
    }

    @Test
    void aVerdictInsertedEarlyIsFound() {
        List<TestEvent> events = new ArrayList<>(acceptedRecord().subList(0, 4));
        events.add(new TestEvent(5, events.get(3).moment(), events.get(3).actor(), new Derived.Concluded(Verdict.ACCEPTED, "")));
        faultAt(4, events);
    }

    @Test
    void aChangedDecisionIsFound() {
        List<TestEvent> events = new ArrayList<>(rejectedRecord());
        int at = indexOf(events, Derived.CheckDecided.class);
        Derived.CheckDecided decided = (Derived.CheckDecided) events.get(at).body();
        events.set(at, with(events.get(at), new Derived.CheckDecided(decided.check(), Outcome.CONFORMS, decided.numbers(), decided.words())));
        faultAt(at, events);
    }

    @Test
    void aChangedReadingIsFoundByTheDecisionThatRestsOnIt() {
        List<TestEvent> events = new ArrayList<>(rejectedRecord());
        int at = indexOf(events, Observation.Measured.class);
        events.set(at, with(events.get(at), Answers.volts("v", "24.1")));
        faultAt(at + 1, events);
    }

    @Test
    void aChangedNumberIsFoundEvenIfTheOutcomeIsRight() {
        List<TestEvent> events = new ArrayList<>(rejectedRecord());
        int at = indexOf(events, Derived.CheckDecided.class);
        Derived.CheckDecided d = (Derived.CheckDecided) events.get(at).body();
        Derived.Numbers n = d.numbers().orElseThrow();
        Derived.Numbers other = new Derived.Numbers(n.rule(), n.value(), n.limits(), n.uncertainty(), "-0.1 V");
        events.set(at, with(events.get(at), new Derived.CheckDecided(d.check(), d.outcome(), Optional.of(other), d.words())));
        faultAt(at, events);
    }

    @Test
    void everyDroppedEventIsFound() {
        List<TestEvent> whole = acceptedRecord();
        for (int at = 0; at < whole.size() - 1; at++) {
            List<TestEvent> events = new ArrayList<>(whole);
            events.remove(at);
            faultAt(at + 1, events);
            assertTrue(fault(renumbered(events)).sequence() >= at + 1, "dropped " + whole.get(at));
        }
    }

    @Test
    void everyTwoSwappedNeighboursAreFound() {
        List<TestEvent> whole = acceptedRecord();
        for (int at = 0; at < whole.size() - 1; at++) {
            List<TestEvent> events = new ArrayList<>(whole);
            Collections.swap(events, at, at + 1);
            faultAt(at, renumbered(events));
        }
    }

    @Test
    void everyDoubledEventIsFound() {
        List<TestEvent> whole = acceptedRecord();
        for (int at = 0; at < whole.size(); at++) {
            List<TestEvent> events = new ArrayList<>(whole);
            events.add(at, whole.get(at));
            faultAt(at + 1, renumbered(events));
        }
    }

    @Test
    void aDerivedEventWithATimeOrAPersonOfItsOwnIsFound() {
        List<TestEvent> whole = acceptedRecord();
        int at = indexOf(whole, Derived.WaitBegan.class);
        TestEvent wait = whole.get(at);
        Moment earlier = new Moment(wait.moment().instant(), 1, wait.moment().offset().minus(Duration.ofNanos(1)));
        List<TestEvent> shortened = new ArrayList<>(whole);
        shortened.set(at, new TestEvent(wait.sequence(), earlier, wait.actor(), wait.body()));
        faultAt(at, shortened);
        List<TestEvent> other = new ArrayList<>(whole);
        other.set(at, new TestEvent(wait.sequence(), wait.moment(), Walk.OTHER_TECHNICIAN, wait.body()));
        faultAt(at, other);
    }

    /** Nobody answers a card in another role than a technician's, nobody but the bench notes that it was interrupted. */
    @ParameterizedTest
    @EnumSource(Role.class)
    void everyFactInARoleThatDoesNotTellItIsFound(Role role) {
        List<TestEvent> whole = Walk.open(PLAN).interrupt("1 min").until("end").run().events();
        for (int at = 0; at < whole.size(); at++) {
            TestEvent old = whole.get(at);
            if (old.body() instanceof Fact fact && Walk.teller(fact).role() != role) {
                List<TestEvent> events = new ArrayList<>(whole);
                events.set(at, new TestEvent(old.sequence(), old.moment(), new Actor(old.actor().id(), role), fact));
                faultAt(at, events);
            }
        }
    }

    @Test
    void aFactBetweenAnotherAndWhatFollowsFromItIsFound() {
        List<TestEvent> events = new ArrayList<>(acceptedRecord());
        int at = indexOf(events, Derived.CheckDecided.class);
        TestEvent before = events.get(at - 1);
        events.add(at, new TestEvent(0, before.moment(), before.actor(), new Fact.Noted("x")));
        faultAt(at, renumbered(events));
    }

    @Test
    void whatIsAddedAfterTheEndIsFound() {
        List<TestEvent> events = new ArrayList<>(acceptedRecord());
        TestEvent last = events.get(events.size() - 1);
        events.add(new TestEvent(last.sequence() + 1, last.moment(), last.actor(), new Fact.Noted("all fine")));
        faultAt(events.size() - 1, events);
    }
}
