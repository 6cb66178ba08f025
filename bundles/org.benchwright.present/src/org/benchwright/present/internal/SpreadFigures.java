package org.benchwright.present.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.RunRules;
import org.benchwright.present.Figure;
import org.benchwright.workshop.Fleet;

/**
 * How readings of one measurement scatter: the moving range from reading to reading, and means and ranges of five readings in a row. They
 * are drawn only where there are enough readings; otherwise the readings' own figure says all there is to say.
 */
public final class SpreadFigures {

    private static final int LEAST = 10;
    private static final int OF_EACH = 5;
    private static final int LEAST_GROUPS = 5;

    private SpreadFigures() {
    }

    /** A figure with its words, before it is put together. */
    private record Spread(String title, String table, String what, ControlChart chart, int beyond, List<Double> places) {
    }

    /** The figures; none where there are too few readings, or all are alike. */
    public static List<Figure> of(Fleet.Measured measured, List<Fleet.Read> readings) {
        List<Double> values = readings.stream().map(Fleet.Read::value).toList();
        if (values.size() < LEAST || values.stream().distinct().count() < 2) {
            return List.of();
        }
        String title = FigureWords.READING.text(Questions.spaced(measured.name()), measured.procedure());
        String name = ReadingFigures.fileName(measured);
        List<Double> places = readings.stream().map(each -> (double) each.opened().toEpochMilli()).toList();
        ControlChart moving = ControlChart.movingRange(values);
        List<Figure> figures = new ArrayList<>();
        figures.add(figure(measured, new Spread(FigureWords.SPREAD_MOVING.text(title), "moving-" + name, FigureWords.SPREAD_RANGE.text(measured.unit()),
                moving, moving.signals().size(), places.subList(1, places.size()))));
        if (values.size() >= OF_EACH * LEAST_GROUPS) {
            figures.addAll(ofGroups(measured, title, name, values, places));
        }
        return figures;
    }

    /** The oldest readings that do not fill a group are left out. */
    private static List<Figure> ofGroups(Fleet.Measured measured, String title, String name, List<Double> values, List<Double> places) {
        int first = values.size() % OF_EACH;
        List<List<Double>> groups = IntStream.range(0, values.size() / OF_EACH)
                .mapToObj(group -> values.subList(first + OF_EACH * group, first + OF_EACH * (group + 1))).toList();
        List<Double> ends = IntStream.range(0, groups.size()).mapToObj(group -> places.get(first + OF_EACH * (group + 1) - 1)).toList();
        ControlChart means = ControlChart.means(groups);
        ControlChart ranges = ControlChart.ranges(groups);
        int broken = (int) RunRules.signals(means, RunRules.westernElectric()).stream().map(RunRules.Signal::place).distinct().count();
        return List.of(figure(measured, new Spread(FigureWords.SPREAD_MEANS.text(title, OF_EACH), "means-" + name,
                FigureWords.VALUE.text(measured.unit()), means, broken, ends)),
                figure(measured, new Spread(FigureWords.SPREAD_RANGES.text(title, OF_EACH), "ranges-" + name,
                        FigureWords.SPREAD_RANGE.text(measured.unit()), ranges, ranges.signals().size(), ends)));
    }

    private static Figure figure(Fleet.Measured measured, Spread spread) {
        ControlChart chart = spread.chart();
        List<String> sentences = List.of(FigureWords.SPREAD_SAYS.text(chart.points().size(), number(chart.centre()), measured.unit(),
                number(chart.lower()), number(chart.upper())), spread.beyond() == 0 ? FigureWords.READING_IN_CONTROL.text()
                        : FigureWords.SPREAD_BEYOND.text(spread.beyond()));
        List<Double> ends = List.of(spread.places().get(0), spread.places().get(spread.places().size() - 1));
        List<Integer> out = chart.signals();
        Plot plot = new Plot(spread.title(), FigureWords.OPENED.text(), spread.what(), Plot.Scale.DATES, List.of(), List.of(
                new Series(FigureWords.SPREAD_POINTS.text(), Role.LINE, spread.places(), chart.points()),
                new Series(FigureWords.READING_CENTRE.text(), Role.STEPS, ends, List.of(chart.centre(), chart.centre())),
                new Series(FigureWords.READING_LIMIT.text(), Role.LIMIT, ends, List.of(chart.upper(), chart.upper())),
                new Series(FigureWords.READING_LIMIT.text() + " ", Role.LIMIT, ends, List.of(chart.lower(), chart.lower())),
                new Series(FigureWords.SPREAD_OUT.text(), Role.SIGNALS, out.stream().map(spread.places()::get).toList(),
                        out.stream().map(chart.points()::get).toList())));
        List<List<String>> rows = IntStream.range(0, chart.points().size()).mapToObj(place -> List.of(
                Instant.ofEpochMilli(spread.places().get(place).longValue()).toString(),
                Numbers.significant(chart.points().get(place), 9))).toList();
        return new Figure(spread.title(), sentences, Optional.of(plot),
                List.of(new SheetTable(spread.table(), List.of(FigureWords.OPENED.text(), spread.what()), rows)));
    }

    private static String number(double value) {
        return Numbers.significant(value, 5);
    }
}
