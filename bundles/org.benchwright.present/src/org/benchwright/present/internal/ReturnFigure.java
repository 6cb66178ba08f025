package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.engine.FieldReturn;
import org.benchwright.evidence.FieldReturns;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.LogRank;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.present.Figure;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.Fleet.Ending;

/**
 * What comes back: units that were accepted and returned within n days all the same. A unit that has not been out for n days counts for the
 * days that it has; one that was tested again without a return on record, until then.
 */
public final class ReturnFigure {

    /** The longest time that is asked about, and one day more: beyond it no difference is made. */
    public static final int MOST_DAYS = 366;

    private static final int MOST_COMPARED = 3;
    private static final int LEAST_TO_DRAW = 5;
    private static final int[] WITHIN = {30, 90, 365};
    /** A unit that came back on the day on which it went out was out for a part of it. */
    private static final double PART_OF_A_DAY = 0.5;

    private ReturnFigure() {
    }

    /** The figure. */
    public static Figure of(List<Fleet.InField> units) {
        long out = count(units, each -> true);
        if (out == 0) {
            return new Figure(FigureWords.RETURNS.text(), List.of(FigureWords.RETURNS_NONE.text()), Optional.empty(), List.of());
        }
        List<String> sentences = new ArrayList<>(sentences(units, out));
        List<List<String>> rows = new ArrayList<>();
        Map<String, List<Fleet.InField>> byProcedure = new TreeMap<>();
        units.forEach(each -> byProcedure.computeIfAbsent(each.procedure(), any -> new ArrayList<>()).add(each));
        for (int days : WITHIN) {
            sentences.add(sentence(units, days));
            if (byProcedure.size() > 1) {
                rows.add(row(FigureWords.RETURNS_ALL.text(), units, days));
            }
            byProcedure.forEach((procedure, its) -> rows.add(row(Questions.spaced(procedure), its, days)));
        }
        sentences.addAll(differences(byProcedure));
        SheetTable table = new SheetTable("field-returns", List.of(FigureWords.PROCEDURE.text(), FigureWords.WITHIN_DAYS.text(),
                FigureWords.WENT_OUT.text(), FigureWords.OUT_SO_LONG.text(), FigureWords.CAME_BACK.text(), FigureWords.CONFIRMED.text(),
                FigureWords.ESCAPED.text(), FigureWords.LEAST.text(), FigureWords.MOST.text()), rows);
        if (out < LEAST_TO_DRAW) {
            sentences.add(FigureWords.TOO_FEW.text(out, LEAST_TO_DRAW));
            return new Figure(FigureWords.RETURNS.text(), sentences, Optional.empty(), List.of(table));
        }
        SurvivalCurve curve = SurvivalCurve.of(lifetimes(units));
        return new Figure(FigureWords.RETURNS.text(), sentences, curve.steps().isEmpty() ? Optional.empty() : Optional.of(plot(curve, units)),
                List.of(table));
    }

    /** How many have come back by each day, with limits; all three stay level until the next one comes back. */
    private static Plot plot(SurvivalCurve curve, List<Fleet.InField> units) {
        List<Double> days = new ArrayList<>(List.of(0.0));
        List<Double> back = new ArrayList<>(List.of(0.0));
        List<Double> least = new ArrayList<>(List.of(0.0));
        List<Double> most = new ArrayList<>(List.of(0.0));
        for (SurvivalCurve.Step step : curve.steps()) {
            Proportion.Interval limits = step.limits(Figures.CONFIDENCE);
            stay(days, step.time(), List.of(back, least, most));
            days.add(step.time());
            back.add(100 * (1 - step.survival()));
            least.add(100 * (1 - limits.upper()));
            most.add(100 * (1 - limits.lower()));
        }
        stay(days, units.stream().mapToInt(Fleet.InField::days).max().orElseThrow(), List.of(back, least, most));
        return new Plot(FigureWords.RETURNS.text(), FigureWords.RETURNS_DAYS.text(), FigureWords.ESCAPED.text(), Plot.Scale.NUMBERS, List.of(),
                List.of(new Series(FigureWords.CAME_BACK.text(), Role.STEPS, days, back),
                        new Series(FigureWords.LEAST.text(), Role.LIMIT, days, least),
                        new Series(FigureWords.MOST.text(), Role.LIMIT, days, most)));
    }

    private static void stay(List<Double> days, double until, List<List<Double>> lines) {
        if (until > days.get(days.size() - 1)) {
            days.add(until);
            lines.forEach(line -> line.add(line.get(line.size() - 1)));
        }
    }

    /** The procedures that let most units go, compared two by two. */
    private static List<String> differences(Map<String, List<Fleet.InField>> byProcedure) {
        List<String> sentences = new ArrayList<>();
        List<String> names = byProcedure.keySet().stream()
                .sorted(Comparator.comparing(name -> -count(byProcedure.get(name), each -> true))).limit(MOST_COMPARED).toList();
        for (int one = 0; one < names.size(); one++) {
            for (int other = one + 1; other < names.size(); other++) {
                try {
                    double probability = LogRank.of(lifetimes(byProcedure.get(names.get(one))), lifetimes(byProcedure.get(names.get(other))))
                            .probability();
                    FigureWords words = probability < 1 - Figures.CONFIDENCE ? FigureWords.RETURNS_DIFFER : FigureWords.RETURNS_ALIKE;
                    sentences.add(words.text(Questions.spaced(names.get(one)), Questions.spaced(names.get(other)),
                            Numbers.probability(probability)));
                } catch (IllegalArgumentException nothingCameBack) {
                    // Neither of the two has anything that could differ; the table shows both.
                    continue;
                }
            }
        }
        return sentences;
    }

    private static List<String> sentences(List<Fleet.InField> units, long out) {
        List<String> sentences = new ArrayList<>();
        long back = count(units, each -> each.ending() == Ending.CAME_BACK);
        sentences.add(FigureWords.RETURNS_SAYS.text(out, back, count(units, found(FieldReturn.Fault.CONFIRMED)),
                count(units, found(FieldReturn.Fault.NOT_FOUND)), count(units, found(FieldReturn.Fault.NOT_LOOKED_FOR))));
        sentences.add(FigureWords.RETURNS_CENSORED.text());
        long again = count(units, each -> each.ending() == Ending.TESTED_AGAIN);
        if (again > 0) {
            sentences.add(FigureWords.RETURNS_AGAIN.text(again));
        }
        return sentences;
    }

    private static Predicate<Fleet.InField> found(FieldReturn.Fault fault) {
        return each -> each.fault().equals(Optional.of(fault));
    }

    private static String sentence(List<Fleet.InField> units, int days) {
        return escapes(units, days).map(escapes -> FigureWords.RETURNS_WITHIN.text(days, Numbers.percent(escapes.escaped()),
                Numbers.percent(escapes.limits().lower()), Numbers.percent(escapes.limits().upper()),
                count(units, each -> each.ending() == Ending.STILL_OUT && each.days() < days)))
                .orElseGet(() -> FigureWords.RETURNS_TOO_EARLY.text(days));
    }

    private static List<String> row(String name, List<Fleet.InField> units, int days) {
        Predicate<Fleet.InField> back = each -> each.ending() == Ending.CAME_BACK && each.days() <= days;
        List<String> row = new ArrayList<>(List.of(name, String.valueOf(days), String.valueOf(count(units, each -> true)),
                String.valueOf(count(units, each -> each.days() >= days)), String.valueOf(count(units, back)),
                String.valueOf(count(units, back.and(found(FieldReturn.Fault.CONFIRMED))))));
        Optional<FieldReturns> escapes = escapes(units, days);
        row.add(escapes.map(each -> Numbers.percent(each.escaped())).orElse(""));
        row.add(escapes.map(each -> Numbers.percent(each.limits().lower())).orElse(""));
        row.add(escapes.map(each -> Numbers.percent(each.limits().upper())).orElse(""));
        return row;
    }

    /** Nothing as long as no unit has been out for so long. */
    private static Optional<FieldReturns> escapes(List<Fleet.InField> units, int days) {
        if (count(units, each -> each.days() >= days) == 0) {
            return Optional.empty();
        }
        return Optional.of(FieldReturns.within(lifetimes(units), days, Figures.CONFIDENCE));
    }

    /** What came back after the longest time that is asked about counts as still out there then. */
    private static Map<Lifetime, Long> lifetimes(List<Fleet.InField> units) {
        Map<Lifetime, Long> lifetimes = new HashMap<>();
        units.forEach(each -> lifetimes.merge(new Lifetime(Math.max(PART_OF_A_DAY, each.days()),
                each.ending() == Ending.CAME_BACK && each.days() < MOST_DAYS), each.count(), Long::sum));
        return lifetimes;
    }

    private static long count(List<Fleet.InField> units, Predicate<Fleet.InField> which) {
        return units.stream().filter(which).mapToLong(Fleet.InField::count).sum();
    }
}
