package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.Proportion;
import org.benchwright.present.Figure;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.Fleet.State;

/** How many units are accepted in their first test, in all and by person and station. */
public final class YieldFigures {

    private static final int LEAST_TO_DRAW = 5;
    private static final int MOST_TO_DRAW = 20;

    /** How the first tests of one person, station or all of them ended. */
    private record Ends(long accepted, long rejected, long undecided) {

        static Ends of(List<Fleet.Group> groups) {
            return new Ends(count(groups, State.ACCEPTED), count(groups, State.REJECTED), count(groups, State.UNDECIDED));
        }

        private static long count(List<Fleet.Group> groups, State state) {
            return groups.stream().filter(group -> group.state() == state).mapToLong(Fleet.Group::count).sum();
        }

        long all() {
            return accepted + rejected + undecided;
        }

        Proportion part() {
            return new Proportion(accepted, all());
        }

        List<String> cells(String name) {
            Proportion.Interval exact = part().clopperPearson(Figures.CONFIDENCE);
            Proportion.Interval score = part().wilson(Figures.CONFIDENCE);
            return List.of(name, String.valueOf(all()), String.valueOf(accepted), String.valueOf(rejected), String.valueOf(undecided),
                    Numbers.percent(part().estimate()), Numbers.percent(exact.lower()), Numbers.percent(exact.upper()),
                    Numbers.percent(score.lower()), Numbers.percent(score.upper()));
        }
    }

    private YieldFigures() {
    }

    /** The three figures. */
    public static List<Figure> of(List<Fleet.Group> groups) {
        List<Fleet.Group> first = groups.stream().filter(group -> group.first() && group.state().verdict().isPresent()).toList();
        return List.of(inAll(first),
                by(FigureWords.YIELD_BY_PERSON.text(), "yield-by-person", FigureWords.PERSON.text(), first, Fleet.Group::technician),
                by(FigureWords.YIELD_BY_STATION.text(), "yield-by-station", FigureWords.STATION.text(), first, Fleet.Group::station));
    }

    private static Figure inAll(List<Fleet.Group> first) {
        Ends ends = Ends.of(first);
        if (ends.all() == 0) {
            return new Figure(FigureWords.YIELD.text(), List.of(FigureWords.YIELD_NONE.text()), Optional.empty(), List.of());
        }
        Proportion.Interval exact = ends.part().clopperPearson(Figures.CONFIDENCE);
        Proportion.Interval score = ends.part().wilson(Figures.CONFIDENCE);
        List<String> sentences = new ArrayList<>();
        sentences.add(FigureWords.YIELD_SAYS.text(ends.accepted(), ends.all(), Numbers.percent(ends.part().estimate()),
                Numbers.percent(exact.lower()), Numbers.percent(exact.upper())));
        if (ends.undecided() > 0) {
            sentences.add(FigureWords.YIELD_UNDECIDED.text(ends.undecided()));
        }
        sentences.add(FigureWords.YIELD_METHOD.text(Numbers.percent(score.lower()), Numbers.percent(score.upper())));
        return new Figure(FigureWords.YIELD.text(), sentences, Optional.empty(),
                List.of(table("first-pass-yield", "", Map.of(FigureWords.YIELD_ALL.text(), ends))));
    }

    private static Figure by(String title, String name, String who, List<Fleet.Group> first, Function<Fleet.Group, String> key) {
        Map<String, Ends> parts = new TreeMap<>();
        Map<String, List<Fleet.Group>> grouped = new TreeMap<>();
        first.forEach(group -> grouped.computeIfAbsent(key.apply(group), any -> new ArrayList<>()).add(group));
        grouped.forEach((each, groups) -> parts.put(each, Ends.of(groups)));
        long all = parts.values().stream().mapToLong(Ends::all).sum();
        List<SheetTable> tables = parts.isEmpty() ? List.of() : List.of(table(name, who, parts));
        if (parts.isEmpty()) {
            return new Figure(title, List.of(FigureWords.YIELD_NONE.text()), Optional.empty(), tables);
        }
        if (parts.size() == 1) {
            return new Figure(title, List.of(FigureWords.YIELD_OF_ONE.text(parts.keySet().iterator().next(), all)), Optional.empty(), tables);
        }
        if (all < LEAST_TO_DRAW) {
            return new Figure(title, List.of(FigureWords.TOO_FEW.text(all, LEAST_TO_DRAW)), Optional.empty(), tables);
        }
        return new Figure(title, List.of(FigureWords.YIELD_BY_SAYS.text(all)), Optional.of(plot(title, who, parts)), tables);
    }

    private static SheetTable table(String name, String who, Map<String, Ends> parts) {
        List<String> headings = List.of(who.isEmpty() ? FigureWords.YIELD.text() : who, FigureWords.FIRST_TESTS.text(),
                FigureWords.ACCEPTED.text(), FigureWords.REJECTED.text(), FigureWords.UNDECIDED.text(), FigureWords.YIELD_PART.text(),
                FigureWords.YIELD_LOWER.text(), FigureWords.YIELD_UPPER.text(), FigureWords.WILSON_LOWER.text(),
                FigureWords.WILSON_UPPER.text());
        return new SheetTable(name, headings, parts.entrySet().stream().map(each -> each.getValue().cells(each.getKey())).toList());
    }

    private static Plot plot(String title, String who, Map<String, Ends> parts) {
        List<Map.Entry<String, Ends>> drawn = parts.entrySet().stream().limit(MOST_TO_DRAW).toList();
        List<Double> places = IntStream.range(0, drawn.size()).mapToObj(place -> (double) place).toList();
        return new Plot(title, who, FigureWords.YIELD_PART.text(), Plot.Scale.NAMES,
                drawn.stream().map(each -> each.getKey() + " (" + each.getValue().all() + ")").toList(),
                List.of(new Series(FigureWords.YIELD_PART.text(), Role.BARS, places, heights(drawn, ends -> ends.part().estimate())),
                        new Series(FigureWords.YIELD_LOWER.text(), Role.ENDS, places,
                                heights(drawn, ends -> ends.part().clopperPearson(Figures.CONFIDENCE).lower())),
                        new Series(FigureWords.YIELD_UPPER.text(), Role.ENDS, places,
                                heights(drawn, ends -> ends.part().clopperPearson(Figures.CONFIDENCE).upper()))));
    }

    private static List<Double> heights(List<Map.Entry<String, Ends>> drawn, Function<Ends, Double> height) {
        return drawn.stream().map(each -> 100 * height.apply(each.getValue())).toList();
    }
}
