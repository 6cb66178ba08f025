package org.benchwright.present.internal;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.AnalysisOfVariance;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.Drift;
import org.benchwright.evidence.RunRules;
import org.benchwright.evidence.VarianceSplit;
import org.benchwright.present.Figure;
import org.benchwright.present.Figures;
import org.benchwright.present.WallTime;
import org.benchwright.workshop.Fleet;

/** The readings of one measurement over time: control chart, run rules, drift, and from whom and where they differ. */
public final class ReadingFigures {

    /** The most readings that one figure looks at: the latest. */
    public static final int MOST = 1000;

    private static final int LEAST_TO_DRAW = 10;
    private static final int MOST_NAMED = 5;
    private static final double MILLIS_OF_A_DAY = 86_400_000;
    private static final List<FigureWords> RULES = List.of(FigureWords.RULE_1, FigureWords.RULE_2, FigureWords.RULE_3, FigureWords.RULE_4);

    private ReadingFigures() {
    }

    /**
     * The figure.
     *
     * @param zone in which the days are told on which rules were broken
     */
    public static Figure of(Fleet.Measured measured, List<Fleet.Read> readings, ZoneId zone) {
        String title = FigureWords.READING.text(Questions.spaced(measured.name()), measured.procedure());
        List<Double> values = readings.stream().map(Fleet.Read::value).toList();
        if (readings.size() < LEAST_TO_DRAW) {
            return new Figure(title, List.of(FigureWords.TOO_FEW.text(readings.size(), LEAST_TO_DRAW)), Optional.empty(),
                    List.of(table(measured, readings, List.of())));
        }
        ControlChart chart = ControlChart.individuals(values);
        List<RunRules.Signal> signals = RunRules.signals(chart, RunRules.westernElectric());
        List<String> sentences = new ArrayList<>();
        if (readings.size() < measured.count()) {
            sentences.add(FigureWords.READING_LATEST.text(readings.size(), measured.count()));
        }
        sentences.add(FigureWords.READING_SAYS.text(readings.size(), number(chart.centre()), measured.unit(), number(chart.lower()),
                number(chart.upper())));
        if (chart.lower() == chart.upper()) {
            sentences.add(FigureWords.READING_TOO_ALIKE.text());
            return new Figure(title, sentences, Optional.empty(), List.of(table(measured, readings, signals)));
        }
        sentences.add(words(readings, signals, new WallTime(zone)));
        drift(measured, readings).ifPresent(sentences::add);
        differ(readings, Fleet.Read::technician, FigureWords.BY_PERSON).ifPresent(sentences::add);
        differ(readings, Fleet.Read::station, FigureWords.BY_STATION).ifPresent(sentences::add);
        differ(readings, Fleet.Read::instrument, FigureWords.BY_INSTRUMENT).ifPresent(sentences::add);
        split(measured, readings).ifPresent(sentences::add);
        return new Figure(title, sentences, Optional.of(plot(title, measured, readings, chart, signals)),
                List.of(table(measured, readings, signals)));
    }

    private static String number(double value) {
        return Numbers.significant(value, 5);
    }

    private static String words(List<Fleet.Read> readings, List<RunRules.Signal> signals, WallTime wall) {
        if (signals.isEmpty()) {
            return FigureWords.READING_IN_CONTROL.text();
        }
        String named = signals.stream().limit(MOST_NAMED)
                .map(signal -> wall.day(readings.get(signal.place()).opened()) + " " + RULES.get(signal.rule().ordinal()).text())
                .collect(Collectors.joining("; "));
        long places = signals.stream().map(RunRules.Signal::place).distinct().count();
        return FigureWords.READING_SIGNALS.text(places, signals.size() > MOST_NAMED ? FigureWords.READING_MORE.text(named) : named);
    }

    private static Optional<String> drift(Fleet.Measured measured, List<Fleet.Read> readings) {
        long begin = readings.get(0).opened().toEpochMilli();
        List<Double> days = readings.stream().map(each -> (each.opened().toEpochMilli() - begin) / MILLIS_OF_A_DAY).toList();
        if (days.stream().distinct().count() < 2) {
            return Optional.empty();
        }
        Drift drift = Drift.of(days, readings.stream().map(Fleet.Read::value).toList());
        String probability = Numbers.probability(drift.probability());
        if (drift.probability() >= 1 - Figures.CONFIDENCE) {
            return Optional.of(FigureWords.READING_NO_DRIFT.text(probability));
        }
        double reach = drift.slopeReach(Figures.CONFIDENCE);
        return Optional.of(FigureWords.READING_DRIFT.text(Numbers.significant(drift.slope(), 3), measured.unit(),
                Numbers.significant(drift.slope() - reach, 3), Numbers.significant(drift.slope() + reach, 3), probability));
    }

    private static Optional<String> differ(List<Fleet.Read> readings, Function<Fleet.Read, String> by, FigureWords what) {
        Map<String, List<Double>> groups = new TreeMap<>();
        readings.forEach(each -> groups.computeIfAbsent(by.apply(each), any -> new ArrayList<>()).add(each.value()));
        if (groups.size() < 2 || groups.size() == readings.size()) {
            return Optional.empty();
        }
        double probability = AnalysisOfVariance.of(groups.values()).probability();
        FigureWords words = probability < 1 - Figures.CONFIDENCE ? FigureWords.READING_DIFFER : FigureWords.READING_ALIKE;
        return Optional.of(words.text(what.text(), Numbers.probability(probability)));
    }

    /** By person, station and unit where they can be told apart; by person and station where each unit was read once. */
    private static Optional<String> split(Fleet.Measured measured, List<Fleet.Read> readings) {
        Optional<String> three = split(readings, each -> List.of(each.technician(), each.station(), each.serial()))
                .map(split -> FigureWords.READING_SPLIT.text(deviation(split, 0), deviation(split, 1), deviation(split, 2),
                        deviation(split, 3), measured.unit()));
        return three.or(() -> split(readings, each -> List.of(each.technician(), each.station())).map(split -> FigureWords.READING_SPLIT_TWO
                .text(deviation(split, 0), deviation(split, 1), deviation(split, 2), measured.unit())));
    }

    private static Optional<VarianceSplit> split(List<Fleet.Read> readings, Function<Fleet.Read, List<String>> levels) {
        try {
            return Optional.of(VarianceSplit.of(
                    readings.stream().map(each -> new VarianceSplit.Reading(each.value(), levels.apply(each))).toList()));
        } catch (IllegalArgumentException notToldApart) {
            return Optional.empty();
        }
    }

    private static String deviation(VarianceSplit split, int place) {
        return Numbers.significant(split.deviation(place), 3);
    }

    /** Procedure and check, as a part of a file's name. */
    static String fileName(Fleet.Measured measured) {
        return (measured.procedure() + "-" + measured.name()).toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    }

    private static SheetTable table(Fleet.Measured measured, List<Fleet.Read> readings, List<RunRules.Signal> signals) {
        String name = "readings-" + fileName(measured);
        List<String> headings = List.of(FigureWords.OPENED.text(), FigureWords.VALUE.text(measured.unit()), FigureWords.UNIT.text(),
                FigureWords.PERSON.text(), FigureWords.STATION.text(), FigureWords.INSTRUMENT.text(), FigureWords.SIGNAL.text());
        Map<Integer, String> broken = signals.stream().collect(Collectors.toMap(RunRules.Signal::place,
                signal -> RULES.get(signal.rule().ordinal()).text(), (one, other) -> one + "; " + other));
        return new SheetTable(name, headings, IntStream.range(0, readings.size())
                .mapToObj(place -> cells(readings.get(place), broken.getOrDefault(place, ""))).toList());
    }

    private static List<String> cells(Fleet.Read read, String signal) {
        return List.of(read.opened().toString(), Numbers.reading(read.value()), read.serial(), read.technician(), read.station(),
                read.instrument(), signal);
    }

    private static Plot plot(String title, Fleet.Measured measured, List<Fleet.Read> readings, ControlChart chart,
            List<RunRules.Signal> signals) {
        List<Double> places = readings.stream().map(each -> (double) each.opened().toEpochMilli()).toList();
        List<Double> ends = List.of(places.get(0), places.get(places.size() - 1));
        List<Integer> broken = signals.stream().map(RunRules.Signal::place).distinct().toList();
        return new Plot(title, FigureWords.OPENED.text(), FigureWords.VALUE.text(measured.unit()), Plot.Scale.DATES, List.of(), List.of(
                new Series(FigureWords.READING_READINGS.text(), Role.LINE, places, chart.points()),
                new Series(FigureWords.READING_CENTRE.text(), Role.STEPS, ends, List.of(chart.centre(), chart.centre())),
                new Series(FigureWords.READING_LIMIT.text(), Role.LIMIT, ends, List.of(chart.upper(), chart.upper())),
                new Series(FigureWords.READING_LIMIT.text() + " ", Role.LIMIT, ends, List.of(chart.lower(), chart.lower())),
                new Series(FigureWords.READING_SIGNAL.text(), Role.SIGNALS, broken.stream().map(places::get).toList(),
                        broken.stream().map(chart.points()::get).toList())));
    }
}
