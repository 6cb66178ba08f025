package org.benchwright.engine.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;

/** What a test remembers from its steps, wherever it stands: what was met, named, read and answered, and how often it came by. */
final class Memory {

    private final Map<String, Stamp> preconditionsMet = new HashMap<>();
    private final Map<String, Observation.InstrumentNamed> instruments = new HashMap<>();
    private final Map<String, Stamp> acknowledged = new HashMap<>();
    private final Map<String, Stamp> marks = new HashMap<>();
    private final Map<String, Quantity> values = new HashMap<>();
    private final Map<String, Boolean> answers = new HashMap<>();
    private final Map<String, Integer> timesTaken = new HashMap<>();
    private final Map<String, Integer> visits = new HashMap<>();

    private Optional<Fact.BenchProved> benchProved = Optional.empty();

    /** Remembers what {@code other} does, and nothing else. */
    void takeOver(Memory other) {
        replace(preconditionsMet, other.preconditionsMet);
        replace(instruments, other.instruments);
        replace(acknowledged, other.acknowledged);
        replace(marks, other.marks);
        replace(values, other.values);
        replace(answers, other.answers);
        replace(timesTaken, other.timesTaken);
        replace(visits, other.visits);
        benchProved = other.benchProved;
    }

    private static <V> void replace(Map<String, V> target, Map<String, V> source) {
        target.clear();
        target.putAll(source);
    }

    /** When each precondition was met, by name. */
    Map<String, Stamp> preconditionsMet() {
        return preconditionsMet;
    }

    /** The instrument that was named for each role. */
    Map<String, Observation.InstrumentNamed> instruments() {
        return instruments;
    }

    /** How the bench was proved last, as far as this test was told. */
    Optional<Fact.BenchProved> benchProved() {
        return benchProved;
    }

    /** The bench was proved. */
    void benchProved(Fact.BenchProved proof) {
        benchProved = Optional.of(proof);
    }

    /** Hazards that whoever has the test has read since it was last interrupted, and when. */
    Map<String, Stamp> acknowledged() {
        return acknowledged;
    }

    /** When each mark was last given, by id. */
    Map<String, Stamp> marks() {
        return marks;
    }

    /** Decided values, by {@code step.measurement}. */
    Map<String, Quantity> values() {
        return values;
    }

    /** Answers that hold for the whole test, by key. */
    Map<String, Boolean> answers() {
        return answers;
    }

    /** How often a bounded way was taken. */
    int timesTaken(String counted) {
        return timesTaken.getOrDefault(counted, 0);
    }

    /** A bounded way is taken once more. */
    void count(String counted) {
        timesTaken.merge(counted, 1, Integer::sum);
    }

    /** How often a step or soak was begun. */
    int visits(String name) {
        return visits.getOrDefault(name, 0);
    }

    /** A step or soak is begun once more. */
    void visit(String name) {
        visits.merge(name, 1, Integer::sum);
    }
}
