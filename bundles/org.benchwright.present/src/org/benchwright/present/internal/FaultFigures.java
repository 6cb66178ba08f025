package org.benchwright.present.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.Pareto;
import org.benchwright.present.Figure;
import org.benchwright.workshop.Fleet;

/** Nonconformities and faults, the most frequent first. */
public final class FaultFigures {

    private static final int LEAST_TO_DRAW = 5;
    private static final int MOST_TO_DRAW = 12;

    private FaultFigures() {
    }

    /** Both figures. */
    public static List<Figure> of(List<Fleet.Found> found) {
        return List.of(figure(FigureWords.NONCONFORMITIES, FigureWords.NONCONFORMITIES_NONE, "nonconformities", pareto(found, false)),
                figure(FigureWords.FAULTS, FigureWords.FAULTS_NONE, "faults", pareto(found, true)));
    }

    private static Pareto pareto(List<Fleet.Found> found, boolean fault) {
        return Pareto.of(found.stream().filter(each -> each.fault() == fault)
                .collect(Collectors.toMap(Fleet.Found::name, Fleet.Found::tests, Long::sum)));
    }

    private static Figure figure(FigureWords title, FigureWords none, String name, Pareto pareto) {
        if (pareto.bars().isEmpty()) {
            return new Figure(title.text(), List.of(none.text()), Optional.empty(), List.of());
        }
        Pareto.Bar most = pareto.bars().get(0);
        String says = FigureWords.PARETO_SAYS.text(pareto.total(), pareto.bars().size(), most.name(), most.count(),
                Numbers.percent(most.share()));
        List<SheetTable> tables = List.of(new SheetTable(name, List.of(FigureWords.CAUSE.text(), FigureWords.TESTS.text(),
                FigureWords.SHARE.text(), FigureWords.CUMULATIVE.text()), pareto.bars().stream().map(FaultFigures::cells).toList()));
        if (pareto.total() < LEAST_TO_DRAW) {
            return new Figure(title.text(), List.of(says, FigureWords.TOO_FEW.text(pareto.total(), LEAST_TO_DRAW)), Optional.empty(), tables);
        }
        return new Figure(title.text(), List.of(says), Optional.of(plot(title.text(), pareto)), tables);
    }

    private static List<String> cells(Pareto.Bar bar) {
        return List.of(bar.name(), String.valueOf(bar.count()), Numbers.percent(bar.share()), Numbers.percent(bar.cumulative()));
    }

    private static Plot plot(String title, Pareto pareto) {
        List<Pareto.Bar> bars = pareto.bars().stream().limit(MOST_TO_DRAW).toList();
        List<Double> places = IntStream.range(0, bars.size()).mapToObj(place -> (double) place).toList();
        return new Plot(title, "", FigureWords.SHARE.text(), Plot.Scale.NAMES, bars.stream().map(Pareto.Bar::name).toList(),
                List.of(new Series(FigureWords.SHARE.text(), Role.BARS, places, heights(bars, Pareto.Bar::share)),
                        new Series(FigureWords.CUMULATIVE.text(), Role.LINE, places, heights(bars, Pareto.Bar::cumulative))));
    }

    private static List<Double> heights(List<Pareto.Bar> bars, Function<Pareto.Bar, Double> height) {
        return bars.stream().map(bar -> 100 * height.apply(bar)).toList();
    }
}
