package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.GoodnessOfFit;
import org.benchwright.evidence.IntervalFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.Soak;
import org.benchwright.evidence.SoakDay;
import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.TurnbullCurve;
import org.benchwright.present.Figure;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;

/**
 * When units stop on their soak, and so how long it needs to be. For the curve, times are rounded to six hours: looks that were meant for
 * the same hour must not seem to tell more about a stop than one look does. For what a day finds, a stop counts at the middle between the
 * two looks.
 */
public final class SoakFigure {

    private static final int LEAST_TO_DRAW = 5;
    private static final int LEAST_STOPS_TO_FIT = 5;
    private static final int PLACES_OF_FIT = 60;
    private static final double SECONDS_OF_AN_HOUR = 3600;
    /** What times are rounded to for the curve, in hours. */
    private static final double GRID_H = 6;

    private SoakFigure() {
    }

    /** The figure. */
    public static Figure of(List<Fleet.Soaks> soaks) {
        long units = soaks.stream().mapToLong(Fleet.Soaks::count).sum();
        if (units == 0) {
            return new Figure(FigureWords.SOAK.text(), List.of(FigureWords.SOAK_NONE.text()), Optional.empty(), List.of());
        }
        Map<StopInterval, Long> stops = new HashMap<>();
        Map<Lifetime, Long> middles = new HashMap<>();
        soaks.forEach(each -> {
            stops.merge(interval(each), each.count(), Long::sum);
            middles.merge(middle(each), each.count(), Long::sum);
        });
        int stopped = (int) soaks.stream().filter(each -> each.bySeconds().isPresent()).mapToLong(Fleet.Soaks::count).sum();
        double longest = middles.keySet().stream().mapToDouble(Lifetime::time).max().orElseThrow();
        List<SoakDay> days = SoakDay.eachDay(middles, Figures.CONFIDENCE);
        List<String> sentences = new ArrayList<>(sentences(middles, units, stopped, longest));
        days.forEach(day -> sentences.add(words(day)));
        Optional<IntervalFit> fit = fit(stops, stopped, sentences);
        List<SheetTable> tables = new ArrayList<>();
        if (!days.isEmpty()) {
            tables.add(table(days));
        }
        if (units < LEAST_TO_DRAW || stopped == 0) {
            if (units < LEAST_TO_DRAW) {
                sentences.add(FigureWords.TOO_FEW.text(units, LEAST_TO_DRAW));
            }
            return new Figure(FigureWords.SOAK.text(), sentences, Optional.empty(), tables);
        }
        TurnbullCurve curve = TurnbullCurve.of(stops);
        tables.add(table(curve));
        return new Figure(FigureWords.SOAK.text(), sentences, Optional.of(plot(curve, fit, longest)), tables);
    }

    private static StopInterval interval(Fleet.Soaks soaks) {
        double after = rounded(soaks.afterSeconds());
        return soaks.bySeconds().map(by -> new StopInterval(after, Math.max(after + GRID_H, rounded(by))))
                .orElseGet(() -> StopInterval.never(after));
    }

    private static double rounded(long seconds) {
        return GRID_H * Math.round(seconds / SECONDS_OF_AN_HOUR / GRID_H);
    }

    private static Lifetime middle(Fleet.Soaks soaks) {
        double after = soaks.afterSeconds() / SECONDS_OF_AN_HOUR;
        return soaks.bySeconds().map(by -> Lifetime.failedAt((after + by / SECONDS_OF_AN_HOUR) / 2)).orElseGet(() -> Lifetime.aliveAt(after));
    }

    private static List<String> sentences(Map<Lifetime, Long> middles, long units, int stopped, double longest) {
        double total = middles.entrySet().stream().mapToDouble(each -> each.getKey().time() * each.getValue()).sum();
        List<String> sentences = new ArrayList<>();
        sentences.add(FigureWords.SOAK_SAYS.text(units, stopped));
        if (stopped == 0) {
            sentences.add(FigureWords.SOAK_NO_STOP.text(Numbers.significant(total, 4)));
        }
        double bound = Soak.limits(total, stopped, Figures.CONFIDENCE, Soak.End.AT_A_TIME).lower();
        sentences.add(FigureWords.SOAK_BOUND.text(Numbers.atLeast(bound)));
        sentences.add(FigureWords.SOAK_LOOKS.text());
        sentences.add(FigureWords.SOAK_TRUNCATED.text(Numbers.significant(longest, 3)));
        return sentences;
    }

    private static String words(SoakDay day) {
        String number = String.valueOf(Math.round(day.to() / 24));
        return day.stopped() == 0 ? FigureWords.SOAK_DAY_NONE.text(number, day.reached(), Numbers.significant(day.most(), 3))
                : FigureWords.SOAK_DAY.text(number, Numbers.significant(day.foundPer1000(), 3), Numbers.significant(day.least(), 3),
                        Numbers.significant(day.most(), 3), Numbers.significant(day.stationHoursEach(), 3));
    }

    /** The Weibull fit and what it says about the rate, where the stops determine one. */
    private static Optional<IntervalFit> fit(Map<StopInterval, Long> stops, int stopped, List<String> sentences) {
        if (stopped < LEAST_STOPS_TO_FIT) {
            return Optional.empty();
        }
        try {
            IntervalFit fit = IntervalFit.weibull(stops);
            IntervalFit.Range shape = IntervalFit.shapeLimits(stops, Figures.CONFIDENCE);
            sentences.add(FigureWords.SOAK_RATE.text(Numbers.significant(fit.shape(), 3), Numbers.significant(shape.lower(), 3),
                    Numbers.significant(shape.upper(), 3), Numbers.significant(fit.scale(), 3)));
            double probability = GoodnessOfFit.constantRate(stops).probability();
            FigureWords words = probability < 1 - Figures.CONFIDENCE ? FigureWords.SOAK_EARLY : FigureWords.SOAK_CONSTANT;
            sentences.add(words.text(Numbers.probability(probability)));
            return Optional.of(fit);
        } catch (IllegalArgumentException undetermined) {
            // All stops lie between the same two looks: the curve still shows that.
            return Optional.empty();
        }
    }

    private static SheetTable table(List<SoakDay> days) {
        return new SheetTable("soak-days", List.of(FigureWords.DAY.text(), FigureWords.REACHED.text(), FigureWords.STOPPED.text(),
                FigureWords.PER_1000.text(), FigureWords.LEAST.text(), FigureWords.MOST.text(), FigureWords.HOURS_EACH.text()),
                days.stream().map(day -> List.of(String.valueOf(Math.round(day.to() / 24)), String.valueOf(day.reached()),
                        String.valueOf(day.stopped()), Numbers.significant(day.foundPer1000(), 4), Numbers.significant(day.least(), 4),
                        Numbers.significant(day.most(), 4), Numbers.significant(day.stationHoursEach(), 4))).toList());
    }

    private static SheetTable table(TurnbullCurve curve) {
        List<List<String>> rows = new ArrayList<>();
        double working = 1;
        for (TurnbullCurve.Mass mass : curve.masses()) {
            if (Double.isFinite(mass.by())) {
                working -= mass.weight();
                rows.add(List.of(Numbers.significant(mass.by(), 6), Numbers.percent(Math.max(0, working))));
            }
        }
        return new SheetTable("soak-curve", List.of(FigureWords.SOAK_HOURS.text(), FigureWords.SOAK_WORKING.text()), rows);
    }

    private static Plot plot(TurnbullCurve curve, Optional<IntervalFit> fit, double longest) {
        List<Double> x = new ArrayList<>(List.of(0.0));
        List<Double> y = new ArrayList<>(List.of(100.0));
        for (TurnbullCurve.Mass mass : curve.masses()) {
            if (Double.isFinite(mass.by())) {
                x.add(mass.by());
                y.add(Math.max(0, y.get(y.size() - 1) - 100 * mass.weight()));
            }
        }
        if (x.get(x.size() - 1) < longest) {
            x.add(longest);
            y.add(y.get(y.size() - 1));
        }
        List<Series> series = new ArrayList<>(List.of(new Series(FigureWords.SOAK_CURVE.text(), Role.STEPS, x, y)));
        fit.ifPresent(each -> {
            List<Double> places = IntStream.rangeClosed(0, PLACES_OF_FIT).mapToObj(i -> longest * i / PLACES_OF_FIT).toList();
            series.add(new Series(FigureWords.SOAK_WEIBULL.text(), Role.LIMIT, places,
                    places.stream().map(place -> 100 * each.survival(place)).toList()));
        });
        return new Plot(FigureWords.SOAK.text(), FigureWords.SOAK_HOURS.text(), FigureWords.SOAK_WORKING.text(), Plot.Scale.NUMBERS, List.of(),
                series);
    }
}
