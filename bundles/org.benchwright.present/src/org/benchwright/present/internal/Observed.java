package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.present.Comparison;
import org.benchwright.present.Comparison.Difference;
import org.benchwright.workshop.KeptTest;

/** What was seen, measured and entered in a test, by its place in the procedure: struck entries left out, amended ones as they are right. */
public final class Observed {

    private final Map<Place, Value> values = new LinkedHashMap<>();
    private final Map<Place, Integer> counts = new HashMap<>();
    private final CheckNames names;
    private String step = "";
    /** The latest entry to each check of the open step; expectations that run together are decided together. */
    private final Map<String, Place> latest = new HashMap<>();

    /**
     * Where something was entered.
     *
     * @param step  in which step, spaced
     * @param check about what, by its name in the plan
     * @param part  which cell or item of it; may be empty
     * @param count which time it was entered there, counted from 1
     */
    private record Place(String step, String check, String part, int count) {
    }

    /** What was entered, under the name that readers know it by, and what it came to; the latter is empty where nothing was decided on it. */
    private record Value(String name, String entered, String outcome) {
        String words() {
            return outcome.isEmpty() ? entered : Message.COMPARE_VALUE.text(entered, outcome);
        }
    }

    private Observed(KeptTest test) {
        this.names = new CheckNames(test.run().plan());
        Map<Long, Fact> right = test.record().map(record -> record.corrections()).orElse(Map.of());
        for (TestEvent event : test.run().holding()) {
            names.follow(event.body());
            take(event.body(), Optional.ofNullable(right.get(event.sequence())));
        }
    }

    /** Of a kept test. */
    public static Observed of(KeptTest test) {
        return new Observed(test);
    }

    private void take(EventBody body, Optional<Fact> right) {
        if (body instanceof Derived.StepOpened opened) {
            step = opened.step();
            latest.clear();
        } else if (body instanceof Derived.CheckDecided decided) {
            Optional.ofNullable(latest.get(decided.check())).ifPresent(place -> values.computeIfPresent(place,
                    (at, value) -> new Value(value.name(), value.entered(), EventWords.outcome(decided.outcome()))));
        } else if (body instanceof Fact fact) {
            String amended = right.isPresent() ? " " + Message.COMPARE_AMENDED.text() : "";
            entry(right.orElse(fact)).ifPresent(entry -> put(entry, amended));
        }
    }

    /** An entry before it has a place. */
    private record Entry(String step, String check, String part, String words) {
    }

    private Optional<Entry> entry(Fact fact) {
        if (fact instanceof Observation.Measured m) {
            return here(m.check(), "", m.value().toString());
        } else if (fact instanceof Observation.CellRead c) {
            return here(c.check(), String.valueOf(c.cell() + 1), c.value().toString());
        } else if (fact instanceof Observation.Seen s) {
            return here(s.check(), "", sight(s.answer()) + (s.asSeen().isEmpty() ? "" : ": " + s.asSeen()));
        } else if (fact instanceof Observation.Confirmed c) {
            return here(c.check(), "", yes(c.yes()));
        } else if (fact instanceof Observation.ItemConfirmed c) {
            return here(c.check(), c.item(), yes(c.yes()));
        } else if (fact instanceof Observation.TextEntered t) {
            return here(t.check(), "", t.text());
        } else if (fact instanceof Observation.Compared c) {
            return here(c.check(), "", c.left() + " / " + c.right());
        } else if (fact instanceof Observation.FaultLogEntered log) {
            return here(log.check(), "", log.lines().isEmpty() ? Message.TOLD_EMPTY_LOG.text()
                    : log.lines().stream().map(line -> (line.code() + " " + line.text()).strip()).collect(Collectors.joining("; ")));
        }
        return elsewhere(fact);
    }

    private static Optional<Entry> elsewhere(Fact fact) {
        if (fact instanceof Observation.PreconditionAnswered p) {
            String more = p.reading().map(Object::toString).orElse(p.text());
            return Optional.of(new Entry("", p.precondition(), "", yes(p.met()) + (more.isEmpty() ? "" : ", " + more)));
        } else if (fact instanceof Observation.InstrumentNamed i) {
            return Optional.of(new Entry("", i.instrument(), "", i.asset()));
        } else if (fact instanceof Observation.Looked l) {
            String readings = l.readings().stream().map(each -> ", " + Questions.spaced(each.condition()) + " " + each.value()).collect(Collectors.joining());
            return Optional.of(new Entry(l.stage(), l.stage(), "", sight(l.answer()) + readings));
        }
        return Optional.empty();
    }

    private Optional<Entry> here(String check, String part, String words) {
        return Optional.of(new Entry(step, check, part, words));
    }

    private static String yes(boolean yes) {
        return (yes ? Message.COMPARE_YES : Message.COMPARE_NO).text();
    }

    private static String sight(Observation.Sight sight) {
        return switch (sight) {
            case YES -> Message.COMPARE_AS_EXPECTED.text();
            case NO -> Message.COMPARE_NOT_AS_EXPECTED.text();
            case NOT_LOOKING -> Message.COMPARE_NOT_LOOKING.text();
        };
    }

    private void put(Entry entry, String amended) {
        int count = counts.merge(new Place(entry.step(), entry.check(), entry.part(), 0), 1, Integer::sum);
        Place place = new Place(entry.step(), entry.check(), entry.part(), count);
        String name = (entry.part().isEmpty() ? names.apply(entry.check()) : names.part(entry.check(), entry.part()))
                + (count == 1 ? "" : " " + Message.COMPARE_COUNT.text(count));
        values.put(place, new Value(name, entry.words() + amended, ""));
        latest.put(entry.check(), place);
    }

    /** Both side by side: what differs first, else in the order of the procedure. */
    public static List<Comparison.Line> compared(Observed then, Observed now) {
        Set<Place> places = new LinkedHashSet<>(now.values.keySet());
        places.addAll(then.values.keySet());
        List<Comparison.Line> lines = new ArrayList<>();
        for (Place place : places) {
            Optional<Value> before = Optional.ofNullable(then.values.get(place));
            Optional<Value> after = Optional.ofNullable(now.values.get(place));
            lines.add(new Comparison.Line(Questions.spaced(place.step()), after.or(() -> before).orElseThrow().name(),
                    before.map(Value::words).orElse(""), after.map(Value::words).orElse(""), difference(before, after)));
        }
        lines.sort(Comparator.comparing(Comparison.Line::difference));
        return lines;
    }

    private static Difference difference(Optional<Value> then, Optional<Value> now) {
        if (then.isEmpty() || now.isEmpty() || !then.get().outcome().equals(now.get().outcome())) {
            return Difference.OUTCOME;
        }
        return then.get().entered().equals(now.get().entered()) ? Difference.NONE : Difference.VALUE;
    }
}
