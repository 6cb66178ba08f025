package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.core.Quantity;
import org.benchwright.core.SheetTable;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.report.Page;

/**
 * The course of each attempt at a soak: when the unit was seen as it must be, when it was not seen, and what was read around it. Every
 * instant of a change is an interval between two samples, and drawn as one.
 */
public final class SoakCourse {

    private static final double HOUR_MS = 3_600_000;

    private final SoakStage soak;
    private final Instant began;
    private final List<Double> seenX = new ArrayList<>();
    private final List<Double> seenY = new ArrayList<>();
    private final List<Double> endsX = new ArrayList<>();
    private final List<Double> endsY = new ArrayList<>();
    private final List<List<Double>> lowX = new ArrayList<>();
    private final List<List<Double>> lowY = new ArrayList<>();
    private final List<List<Double>> highY = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();

    private SoakCourse(SoakStage soak, Instant began) {
        this.soak = soak;
        this.began = began;
        soak.conditions().forEach(condition -> {
            lowX.add(new ArrayList<>());
            lowY.add(new ArrayList<>());
            highY.add(new ArrayList<>());
        });
        state(began, 1);
    }

    /** A section for the state and one for each condition, attempt by attempt; none where the test had no soak. */
    public static List<Page.Section> of(TestRun run) {
        List<Page.Section> sections = new ArrayList<>();
        Optional<SoakCourse> going = Optional.empty();
        List<String> proved = SoakProof.of(run);
        int attempt = 0;
        Optional<TestEvent> look = Optional.empty();
        for (TestEvent event : run.holding()) {
            look = event.body() instanceof Fact.Looked ? Optional.of(event) : look;
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
        if (event.body() instanceof Fact.Looked look) {
            state(now, look.answer() == Fact.Sight.YES ? 1 : 0);
            look.readings().forEach(reading -> read(reading.condition(), now, reading.value(), reading.value()));
            row(now, now, CourseWords.LOOK.text(), CourseWords.LOOKED.text());
        } else if (event.body() instanceof Fact.WatchHeld run) {
            state(run.from().received(), 1);
            state(run.to().received(), 1);
            run.conditions().forEach(range -> {
                read(range.condition(), run.from().received(), range.low(), range.high());
                read(range.condition(), run.to().received(), range.low(), range.high());
            });
        } else if (event.body() instanceof Fact.WatchChanged changed) {
            Instant good = changed.lastGood().map(Fact.Sampled::received).orElse(changed.firstBad().received());
            state(good, 1);
            between(good, changed.firstBad().received());
            state(changed.firstBad().received(), 0);
            row(good, changed.firstBad().received(), CourseWords.WATCH.text(), changed.shows());
        } else if (event.body() instanceof Fact.WatchCondition crossed) {
            read(crossed.condition(), crossed.after().received(), crossed.value(), crossed.value());
            row(crossed.before().orElse(crossed.after()).received(), crossed.after().received(), CourseWords.WATCH.text(),
                    (crossed.inside() ? CourseWords.INSIDE : CourseWords.OUTSIDE).text(Questions.spaced(crossed.condition()), crossed.value().toString()));
        } else if (event.body() instanceof Fact.WatchSilent silent) {
            Instant from = silent.lastSeen().map(Fact.Sampled::received).orElse(now);
            state(from, 1);
            state(from, 0.5);
            row(from, now, CourseWords.WATCH.text(), CourseWords.SILENT.text(silent.why()));
        } else if (event.body() instanceof Fact.WatchSees sees) {
            state(sees.at().received(), 0.5);
            state(sees.at().received(), 1);
        } else if (event.body() instanceof Derived.SoakEnded ended) {
            row(now, now, "", ended.words());
        }
    }

    private double hours(Instant at) {
        return Math.max(0, Duration.between(began, at).toMillis() / HOUR_MS);
    }

    private void state(Instant at, double height) {
        double x = hours(at);
        seenX.add(seenX.isEmpty() ? x : Math.max(x, seenX.get(seenX.size() - 1)));
        seenY.add(height);
    }

    private void between(Instant from, Instant to) {
        endsX.addAll(List.of(hours(from), hours(to)));
        endsY.addAll(List.of(1.0, 0.0));
    }

    private void read(String name, Instant at, Quantity low, Quantity high) {
        for (int i = 0; i < soak.conditions().size(); i++) {
            Condition condition = soak.conditions().get(i);
            if (condition.name().equals(name)) {
                UnitOfMeasure unit = condition.limits().unit();
                lowX.get(i).add(hours(at));
                lowY.get(i).add(low.exactIn(unit).doubleValue());
                highY.get(i).add(high.exactIn(unit).doubleValue());
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
        SheetTable table = new SheetTable(soak.name(), List.of(CourseWords.FROM.text(), CourseWords.TO.text(), CourseWords.BY.text(), CourseWords.WHAT.text()), rows);
        sections.add(new Page.Section(soak.title(), proved.isEmpty() ? List.of(CourseWords.HOW.text()) : List.of(proved, CourseWords.HOW.text()),
                Optional.of(new Plot(soak.title(), CourseWords.HOURS.text(), CourseWords.HEIGHT.text(), Plot.Scale.NUMBERS, List.of(), state)),
                List.of(table)));
        for (int i = 0; i < soak.conditions().size(); i++) {
            if (!lowX.get(i).isEmpty()) {
                sections.add(condition(soak.conditions().get(i), lowX.get(i), lowY.get(i), highY.get(i)));
            }
        }
        return sections;
    }

    private Page.Section condition(Condition condition, List<Double> x, List<Double> low, List<Double> high) {
        String name = Questions.spaced(condition.name());
        List<Plot.Series> series = new ArrayList<>();
        series.add(new Plot.Series(CourseWords.LOWEST.text(), Plot.Role.LINE, x, low));
        series.add(new Plot.Series(CourseWords.HIGHEST.text(), Plot.Role.LINE, x, high));
        UnitOfMeasure unit = condition.limits().unit();
        double end = Math.max(seenX.get(seenX.size() - 1), x.get(x.size() - 1));
        condition.limits().lower().ifPresent(limit -> series.add(limit(CourseWords.LOWER.text(), end, limit, unit)));
        condition.limits().upper().ifPresent(limit -> series.add(limit(CourseWords.UPPER.text(), end, limit, unit)));
        return new Page.Section(name, List.of(CourseWords.LIMITS.text(name, condition.limits().toString())), Optional.of(new Plot(name,
                CourseWords.HOURS.text(), name + ", " + unit.word(), Plot.Scale.NUMBERS, List.of(), series)), List.of());
    }

    private static Plot.Series limit(String name, double end, Quantity limit, UnitOfMeasure unit) {
        double height = limit.exactIn(unit).doubleValue();
        return new Plot.Series(name, Plot.Role.LIMIT, List.of(0.0, end), List.of(height, height));
    }
}
