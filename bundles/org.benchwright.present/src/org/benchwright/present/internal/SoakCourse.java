package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.core.Quantity;
import org.benchwright.core.SheetTable;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.report.Page;

/**
 * The course of each attempt at a soak: when the unit was seen as it must be, when it was not seen, and what was read around it. Every
 * instant of a change is an interval between two samples, and drawn as one.
 */
public final class SoakCourse {

    private static final double HOUR_MS = 3_600_000;
    /** Where the line is drawn while nobody sees the unit. */
    private static final double UNSEEN = 0.5;

    private final SoakStage soak;
    /** When it began, as the wall clock would have shown it if it had hung there then as it was set since. */
    private Instant began;
    private final List<Double> seenX = new ArrayList<>();
    private final List<Double> seenY = new ArrayList<>();
    private final List<Double> endsX = new ArrayList<>();
    private final List<Double> endsY = new ArrayList<>();
    private final List<List<Spot>> readings = new ArrayList<>();
    private final List<List<Spot>> ranges = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();

    /** A point of a plot. */
    private record Spot(double x, double y) {
    }

    private SoakCourse(SoakStage soak, Instant began) {
        this.soak = soak;
        this.began = began;
        soak.conditions().forEach(condition -> {
            readings.add(new ArrayList<>());
            ranges.add(new ArrayList<>());
        });
        point(0, 1);
    }

    /** A section for the state and one for each condition, attempt by attempt; none where the test had no soak. */
    public static List<Page.Section> of(TestRun run) {
        List<Page.Section> sections = new ArrayList<>();
        Optional<SoakCourse> going = Optional.empty();
        List<String> proved = SoakProof.of(run);
        int attempt = 0;
        Optional<TestEvent> look = Optional.empty();
        for (TestEvent event : run.holding()) {
            look = event.body() instanceof Observation.Looked ? Optional.of(event) : look;
            if (event.body() instanceof Derived.SoakBegun begun) {
                going = stage(run, begun.stage()).map(soak -> new SoakCourse(soak, event.moment().instant()));
                // The look that began it comes before what follows from it.
                if (going.isPresent() && look.isPresent()) {
                    going.get().take(look.get());
                }
            } else if (going.isPresent()) {
                going.get().take(event);
                if (event.body() instanceof Derived.SoakEnded) {
                    sections.addAll(going.get().sections(attempt < proved.size() ? proved.get(attempt) : ""));
                    going = Optional.empty();
                }
            }
            if (event.body() instanceof Derived.SoakEnded) {
                attempt++;
            }
        }
        int last = attempt;
        going.ifPresent(open -> sections.addAll(open.sections(last < proved.size() ? proved.get(last) : "")));
        return List.copyOf(sections);
    }

    private static Optional<SoakStage> stage(TestRun run, String name) {
        return run.plan().stages().stream().filter(SoakStage.class::isInstance).map(SoakStage.class::cast).filter(s -> s.name().equals(name)).findFirst();
    }

    // ---- events

    private void take(TestEvent event) {
        Instant now = event.moment().instant();
        if (event.body() instanceof Observation.Looked look) {
            seen(now, look.answer() == Observation.Sight.YES ? 1 : 0);
            look.readings().forEach(reading -> into(readings, reading.condition(), now, reading.value()));
            row(now, now, CourseWords.LOOK.text(), CourseWords.LOOKED.text());
        } else if (event.body() instanceof WatchFact.Sees sees) {
            seen(sees.at().received(), 1);
        } else if (event.body() instanceof WatchFact.Held run) {
            seen(run.from().received(), 1);
            point(hours(run.to().received()), 1);
            for (WatchFact.ConditionRange range : run.conditions()) {
                for (WatchFact.Sampled end : List.of(run.from(), run.to())) {
                    into(ranges, range.condition(), end.received(), range.low());
                    into(ranges, range.condition(), end.received(), range.high());
                }
            }
        } else if (event.body() instanceof WatchFact.Changed changed) {
            Instant good = changed.lastGood().map(WatchFact.Sampled::received).orElse(changed.firstBad().received());
            seen(good, 1);
            between(good, changed.firstBad().received());
            point(hours(changed.firstBad().received()), 0);
            row(good, changed.firstBad().received(), CourseWords.WATCH.text(), changed.shows());
        } else if (event.body() instanceof WatchFact.ConditionCrossed crossed) {
            into(readings, crossed.condition(), crossed.after().received(), crossed.value());
            row(crossed.before().orElse(crossed.after()).received(), crossed.after().received(), CourseWords.WATCH.text(),
                    (crossed.inside() ? CourseWords.INSIDE : CourseWords.OUTSIDE).text(Questions.spaced(crossed.condition()), crossed.value().toString()));
        } else if (event.body() instanceof WatchFact.Silent silent) {
            Instant from = silent.lastSeen().map(WatchFact.Sampled::received).orElse(now);
            row(from, now, CourseWords.WATCH.text(), CourseWords.SILENT.text(silent.why()));
        } else if (event.body() instanceof Fact.ClockChanged changed) {
            began = began.plus(changed.by());
        } else if (event.body() instanceof Derived.SoakEnded ended) {
            row(now, now, "", ended.words());
        }
    }

    private double hours(Instant at) {
        return Math.max(0, Duration.between(began, at).toMillis() / HOUR_MS);
    }

    /** Seen in that state at that instant; since it was last seen, it was not. */
    private void seen(Instant at, double height) {
        double x = hours(at);
        double last = seenX.get(seenX.size() - 1);
        if (x > last) {
            point(last, UNSEEN);
            point(x, UNSEEN);
        }
        point(x, height);
    }

    private void point(double x, double height) {
        seenX.add(seenX.isEmpty() ? x : Math.max(x, seenX.get(seenX.size() - 1)));
        seenY.add(height);
    }

    private void between(Instant from, Instant to) {
        endsX.addAll(List.of(hours(from), hours(to)));
        endsY.addAll(List.of(1.0, 0.0));
    }

    private void into(List<List<Spot>> spots, String name, Instant at, Quantity value) {
        for (int i = 0; i < soak.conditions().size(); i++) {
            if (soak.conditions().get(i).name().equals(name)) {
                spots.get(i).add(new Spot(hours(at), value.exactIn(soak.conditions().get(i).limits().unit()).doubleValue()));
            }
        }
    }

    private void row(Instant from, Instant to, String by, String words) {
        rows.add(List.of(time(from), time(to), by, words));
    }

    private String time(Instant at) {
        return BigDecimal.valueOf(hours(at)).setScale(4, RoundingMode.HALF_UP).toPlainString();
    }

    // ---- the page

    private List<Page.Section> sections(String proved) {
        List<Page.Section> sections = new ArrayList<>();
        List<Plot.Series> state = new ArrayList<>();
        state.add(new Plot.Series(CourseWords.STATE.text(), Plot.Role.LINE, seenX, seenY));
        if (!endsX.isEmpty()) {
            state.add(new Plot.Series(CourseWords.BETWEEN.text(), Plot.Role.ENDS, endsX, endsY));
        }
        SheetTable table = new SheetTable("soak", List.of(CourseWords.FROM.text(), CourseWords.TO.text(), CourseWords.BY.text(), CourseWords.WHAT.text()), rows);
        sections.add(new Page.Section(soak.title(), proved.isEmpty() ? List.of(CourseWords.HOW.text()) : List.of(proved, CourseWords.HOW.text()),
                Optional.of(new Plot(soak.title(), CourseWords.HOURS.text(), CourseWords.HEIGHT.text(), Plot.Scale.NUMBERS, List.of(), state)),
                List.of(table)));
        for (int i = 0; i < soak.conditions().size(); i++) {
            if (!readings.get(i).isEmpty() || !ranges.get(i).isEmpty()) {
                sections.add(condition(soak.conditions().get(i), readings.get(i), ranges.get(i)));
            }
        }
        return sections;
    }

    private Page.Section condition(Condition condition, List<Spot> read, List<Spot> held) {
        String name = Questions.spaced(condition.name());
        List<Plot.Series> series = new ArrayList<>();
        if (!read.isEmpty()) {
            series.add(series(CourseWords.READ.text(), Plot.Role.POINTS, read));
        }
        if (!held.isEmpty()) {
            series.add(series(CourseWords.RANGE.text(), Plot.Role.ENDS, held));
        }
        UnitOfMeasure unit = condition.limits().unit();
        double end = seenX.get(seenX.size() - 1);
        condition.limits().lower().ifPresent(limit -> series.add(limit(CourseWords.LOWER.text(), end, limit, unit)));
        condition.limits().upper().ifPresent(limit -> series.add(limit(CourseWords.UPPER.text(), end, limit, unit)));
        return new Page.Section(name, List.of(CourseWords.LIMITS.text(name, condition.limits().toString())), Optional.of(new Plot(name,
                CourseWords.HOURS.text(), name + ", " + unit.word(), Plot.Scale.NUMBERS, List.of(), series)), List.of());
    }

    private static Plot.Series series(String name, Plot.Role role, List<Spot> spots) {
        List<Spot> inOrder = spots.stream().sorted(Comparator.comparingDouble(Spot::x)).toList();
        return new Plot.Series(name, role, inOrder.stream().map(Spot::x).toList(), inOrder.stream().map(Spot::y).toList());
    }

    private static Plot.Series limit(String name, double end, Quantity limit, UnitOfMeasure unit) {
        double height = limit.exactIn(unit).doubleValue();
        return new Plot.Series(name, Plot.Role.LIMIT, List.of(0.0, end), List.of(height, height));
    }
}
