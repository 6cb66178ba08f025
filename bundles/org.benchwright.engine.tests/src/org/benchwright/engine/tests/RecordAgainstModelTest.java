package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.Deed;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Random deeds in random order: the engine's record takes what the slow one takes, and nothing else. */
class RecordAgainstModelTest implements PropertyTest {

    private static final int TRIES = 1500;
    private static final List<TestRun> RUNS = List.of(Signing.good().run(), Signing.departed().run(), Signing.rejectedUnit().run());
    private static final List<String> PEOPLE = List.of("LW", "KM", "QN", "SV", "RB", "TH", "NN");
    private static final List<String> DEEDS = List.of("departure", "departure", "departure", "departure", "nonconformity", "nonconformity", "amend",
            "review", "hand over", "hand over", "supersede", "recall", "void");

    /** Numbers out of which a deed is made. */
    record Drawn(int person, int deed, int which, int how) {
    }

    @Provide
    Arbitrary<List<Drawn>> deeds() {
        Arbitrary<Integer> small = Arbitraries.integers().between(0, 1000);
        // The first two of the people may decide; they are drawn more often, or hardly anything would ever be done.
        Arbitrary<Integer> person = Arbitraries.frequencyOf(Tuple.of(4, Arbitraries.integers().between(0, 1)),
                Tuple.of(2, Arbitraries.integers().between(2, PEOPLE.size() - 1)));
        return Combinators.combine(person, small, small, small).as(Drawn::new).list().ofMaxSize(24);
    }

    @Provide
    Arbitrary<Integer> runs() {
        return Arbitraries.integers().between(0, RUNS.size() - 1);
    }

    @Property(tries = TRIES)
    void theRecordTakesWhatTheSlowOneTakesAndNothingElse(@ForAll("runs") int which, @ForAll boolean forReview, @ForAll("deeds") List<Drawn> deeds) {
        walk(which, forReview, deeds);
    }

    private static Map<String, Integer> walk(int which, boolean forReview, List<Drawn> deeds) {
        TestRun run = RUNS.get(which);
        Signing signing = forReview ? Signing.drawn(run) : Signing.of(run);
        ObviousRecord slow = slow(run, forReview);
        for (Drawn drawn : deeds) {
            ObviousRecord.Done done = done(drawn, run, signing);
            boolean taken = take(signing, done, run);
            assertEquals(slow.takes(done), taken, done + " after " + slow.counts() + ", standing " + signing.record().standing());
        }
        return slow.counts();
    }

    private static ObviousRecord slow(TestRun run, boolean forReview) {
        Set<String> hands = new HashSet<>(Set.of("QN", "RB"));
        if (run.events().stream().anyMatch(event -> event.body() instanceof Fact.Released)) {
            hands.add("SV");
        }
        Map<String, Set<String>> roles = new HashMap<>();
        PEOPLE.forEach(person -> roles.put(person, Signing.PEOPLE.get(person).stream().map(Role::name).collect(Collectors.toSet())));
        return new ObviousRecord(deviations(run, false), deviations(run, true), hands, roles, forReview);
    }

    private static Set<String> deviations(TestRun run, boolean nonconformity) {
        return Deviation.of(run).stream().filter(each -> each.nonconformity() == nonconformity).map(each -> String.valueOf(each.sequence()))
                .collect(Collectors.toSet());
    }

    private static ObviousRecord.Done done(Drawn drawn, TestRun run, Signing signing) {
        String person = PEOPLE.get(drawn.person());
        String deed = DEEDS.get(drawn.deed() % DEEDS.size());
        List<Long> events = Deviation.of(run).stream().map(Deviation::sequence).toList();
        String event = events.isEmpty() || drawn.which() % 9 == 0 ? "7" : String.valueOf(events.get(drawn.which() % events.size()));
        return switch (deed) {
            case "departure" -> new ObviousRecord.Done(person, deed, event,
                    DepartureDecision.values()[Math.max(0, drawn.how() % 14 - 11)].name());
            case "nonconformity" -> new ObviousRecord.Done(person, deed, event, Disposition.values()[drawn.how() % 6].name());
            case "amend" -> new ObviousRecord.Done(person, deed, List.of("bent", "dented", "scratched").get(drawn.how() % 3), "");
            case "review" -> new ObviousRecord.Done(person, deed, drawn.how() % 4 == 0 ? "no" : "yes", "");
            case "hand over" -> new ObviousRecord.Done(person, deed, String.valueOf(signing.record().issue() + (drawn.how() % 6 == 0 ? 1 : 0)), "");
            default -> new ObviousRecord.Done(person, deed, "", "");
        };
    }

    private static boolean take(Signing signing, ObviousRecord.Done done, TestRun run) {
        RecordFact fact = fact(done, run);
        boolean possible = signing.record().objection(Deed.of(fact)).isEmpty();
        try {
            signing.does(done.person(), fact);
            assertTrue(possible, "what is taken was said to be possible: " + done);
            return true;
        } catch (RefusedException refused) {
            return false;
        }
    }

    private static RecordFact fact(ObviousRecord.Done done, TestRun run) {
        return switch (done.what()) {
            case "departure" -> new RecordFact.DepartureDecided(Long.parseLong(done.detail()), DepartureDecision.valueOf(done.decision()), "because");
            case "nonconformity" -> new RecordFact.NonconformityDecided(Long.parseLong(done.detail()), Disposition.valueOf(done.decision()), "because");
            case "amend" -> new RecordFact.Amended(Signing.event(run, Observation.TextEntered.class, "damage"), done.detail(), "because");
            case "review" -> new RecordFact.Reviewed(done.detail().equals("yes"), "because");
            case "hand over" -> new RecordFact.HandedOver("the owner", Signing.TEST + "/" + done.detail());
            case "supersede" -> new RecordFact.Superseded("T-22222-22222", "because");
            case "recall" -> new RecordFact.Recalled("because");
            default -> new RecordFact.Voided("because");
        };
    }

    /** The property would say nothing if hardly any deed were ever taken. */
    @Test
    void randomDeedsReachEveryState() {
        Map<String, Integer> reached = new TreeMap<>();
        Random random = new Random(17);
        for (int i = 0; i < 1500; i++) {
            List<Drawn> deeds = IntStream.range(0, 24).mapToObj(n -> new Drawn(
                    random.nextInt(3) < 2 ? random.nextInt(2) : 2 + random.nextInt(PEOPLE.size() - 2), random.nextInt(1000), random.nextInt(1000),
                    random.nextInt(1000))).toList();
            walk(i % RUNS.size(), i % 2 == 0, deeds).forEach((what, count) -> reached.merge(what, count, Integer::sum));
        }
        for (String deed : DEEDS) {
            assertTrue(reached.getOrDefault(deed, 0) > 50, reached.toString());
        }
    }
}
