package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.present.FaultExplanation;
import org.benchwright.present.TimelineLine;

/** What happened so far. */
public final class Timeline {

    private Timeline() {
    }

    /** What happened in order, struck entries among it. What a watch saw over and over is one line, with the numbers of its entries. */
    public static List<TimelineLine> of(TestRun run, Times times) {
        Set<Long> struck = run.struck();
        List<TestEvent> events = run.events();
        List<TimelineLine> every = every(run, times);
        List<TimelineLine> lines = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            WatchRuns runs = WatchRuns.at(events, i, struck);
            int last = i + runs.events() - 1;
            TimelineLine line = every.get(last);
            lines.add(runs.held().size() < 2 ? line
                    : new TimelineLine(line.sequence(), line.instant(), line.who(), runs.words(times), false, false));
            i = last;
        }
        return List.copyOf(lines);
    }

    /** Every event of the test in order, struck entries among them. */
    public static List<TimelineLine> every(TestRun run, Times times) {
        Set<Long> struck = run.struck();
        CheckNames names = new CheckNames(run.plan());
        List<TimelineLine> lines = new ArrayList<>();
        for (TestEvent event : run.events()) {
            names.follow(event.body());
            lines.add(line(event, struck.contains(event.sequence()), names, times));
        }
        return List.copyOf(lines);
    }

    /** As {@link #of}, for whoever works on the test: what would give a blind entry away is hidden until that is on record. */
    public static List<TimelineLine> soFar(TestRun run, Times times) {
        HiddenReadings hidden = HiddenReadings.of(run);
        Set<Long> covered = run.events().stream().filter(event -> hidden.covers(event.body())).map(TestEvent::sequence).collect(Collectors.toSet());
        return of(run, times).stream().map(line -> covered.contains(line.sequence()) ? line.saying(hidden.words()) : line).toList();
    }

    private static TimelineLine line(TestEvent event, boolean struck, CheckNames names, Times times) {
        String who = event.body() instanceof Fact ? event.actor().id() : "";
        return new TimelineLine(event.sequence(), event.moment().instant(), who, EventWords.of(event.body(), names, times), struck,
                event.body() instanceof Derived.StepOpened);
    }

    /**
     * What a person is told at once about the last events of a test: decisions with their margins, repeats, moves, departures, the end; nothing of
     * it that would give a blind entry away.
     */
    public static List<String> news(TestRun run, List<TestEvent> events) {
        HiddenReadings hidden = HiddenReadings.of(run);
        boolean several = events.stream().filter(event -> numbers(event).isPresent()).count() > 1;
        return events.stream().filter(event -> event.body() instanceof Derived).filter(event -> !hidden.covers(event.body()))
                .flatMap(event -> EventWords.derived((Derived) event.body()).map(words -> several ? named(event, words) : words).stream()).toList();
    }

    private static Optional<Derived.CheckDecided> numbers(TestEvent event) {
        return event.body() instanceof Derived.CheckDecided decided && decided.numbers().isPresent() ? Optional.of(decided) : Optional.empty();
    }

    /** Where one reading decides several values, such as one that is derived from it, each is told with its name. */
    private static String named(TestEvent event, String words) {
        return numbers(event).map(decided -> Message.SAID_NAMED.text(Questions.spaced(decided.check()), words)).orElse(words);
    }

    /** The lines of a fault log among these events, in plain words. */
    public static List<FaultExplanation> explanations(UnitFamily family, List<TestEvent> events) {
        return events.stream().filter(event -> event.body() instanceof Observation.FaultLogEntered)
                .flatMap(event -> ((Observation.FaultLogEntered) event.body()).lines().stream()).map(line -> explain(family, line)).toList();
    }

    /** All that the family's fault notes tell. */
    public static List<FaultExplanation> notes(UnitFamily family) {
        return family.faults().stream().map(note -> explain(family, new Observation.FaultLine(note.code(), ""))).toList();
    }

    private static FaultExplanation explain(UnitFamily family, Observation.FaultLine line) {
        return family.fault(line.code()).map(n -> new FaultExplanation(line.code(), true, n.title(), n.means(), n.often(), n.next()))
                .orElse(new FaultExplanation(line.code(), false, Message.FAULT_UNKNOWN.text(family.title()), "", "", ""));
    }
}
