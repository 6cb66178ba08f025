package org.benchwright.present.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.core.SheetTable;
import org.benchwright.evidence.BenchCapacity;
import org.benchwright.present.Figure;
import org.benchwright.workshop.Fleet;

/** Whether the stations suffice for what comes: how busy they are, how long a unit waits, and what one more would change. */
public final class CapacityFigure {

    /** Above this, queues are long and take long to reckon; what helps is known without that. */
    private static final double BUSIEST_TOLD = 0.85;
    private static final int MOST_STATIONS = 50;
    private static final int LEAST_SOAKS = 5;
    private static final int MORE = 3;

    private CapacityFigure() {
    }

    /**
     * The figure.
     *
     * @param span from the first to the last test that was opened
     */
    public static Figure of(List<Fleet.Group> groups, List<Fleet.Soaks> soaks, Optional<Duration> span) {
        long soaked = soaks.stream().mapToLong(Fleet.Soaks::count).sum();
        double hours = span.map(Duration::toHours).orElse(0L);
        if (soaked < LEAST_SOAKS || hours <= 0) {
            return new Figure(FigureWords.CAPACITY.text(), List.of(FigureWords.CAPACITY_NONE.text(soaked, LEAST_SOAKS)), Optional.empty(),
                    List.of());
        }
        int stations = (int) groups.stream().map(Fleet.Group::station).distinct().count();
        double soak = soaks.stream().mapToDouble(each -> each.bySeconds().orElse(each.afterSeconds()) * (double) each.count()).sum() / soaked
                / 3600;
        double arrivals = soaked / hours;
        List<String> sentences = new ArrayList<>();
        BenchCapacity now = BenchCapacity.of(Math.min(stations, 1000), soak, arrivals);
        sentences.add(FigureWords.CAPACITY_SAYS.text(soaked, Numbers.significant(hours / 24, 3), stations, Numbers.significant(soak, 3),
                Numbers.percent(now.busy())));
        sentences.add(now.busy() >= 1 ? FigureWords.CAPACITY_SHORT.text(Numbers.significant(Math.ceil(soak * arrivals / BUSIEST_TOLD), 4))
                : wait(now, soak).map(wait -> FigureWords.CAPACITY_WAIT.text(Numbers.significant(wait, 2),
                        Numbers.percent(now.turnedAway()))).orElseGet(FigureWords.CAPACITY_BUSY::text));
        sentences.add(FigureWords.CAPACITY_ASSUMED.text());
        int most = Math.min(1000, Math.max(stations + MORE, (int) Math.ceil(soak * arrivals / BUSIEST_TOLD) + 1));
        List<List<String>> rows = IntStream.rangeClosed(Math.max(1, stations - 1), most)
                .filter(count -> count <= stations + MORE || count >= most - 1)
                .mapToObj(count -> row(BenchCapacity.of(count, soak, arrivals), soak)).toList();
        return new Figure(FigureWords.CAPACITY.text(), sentences, Optional.empty(),
                List.of(new SheetTable("bench-capacity", List.of(FigureWords.STATIONS.text(), FigureWords.BUSY.text(), FigureWords.WAIT.text(),
                        FigureWords.TURNED_AWAY.text(), FigureWords.MOST_A_WEEK.text()), rows)));
    }

    private static List<String> row(BenchCapacity capacity, double soak) {
        return List.of(String.valueOf(capacity.stations()), Numbers.percent(capacity.busy()),
                wait(capacity, soak).map(wait -> Numbers.significant(wait, 2)).orElse(""), Numbers.percent(capacity.turnedAway()),
                Numbers.significant(capacity.most(soak) * 24 * 7, 3));
    }

    /** The mean wait in hours; nothing where it is not reckoned. */
    private static Optional<Double> wait(BenchCapacity capacity, double soak) {
        boolean told = capacity.busy() <= BUSIEST_TOLD && capacity.stations() <= MOST_STATIONS;
        return told ? Optional.of(capacity.meanWait() * soak) : Optional.empty();
    }
}
