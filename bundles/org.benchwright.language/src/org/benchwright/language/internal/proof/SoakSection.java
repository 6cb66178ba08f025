package org.benchwright.language.internal.proof;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.language.proof.ProofSection;
import org.benchwright.language.proof.ProofSection.Subject;
import org.benchwright.language.proof.SoakProof;

/** What soaks detect, in words, tables and curves. */
final class SoakSection {

    private static final int POINTS = 40;
    /** The curve goes on to fault intervals so many times as long as the soak. */
    private static final double REACH = 4;

    private final SoakProof soak;
    private final Optional<Duration> whatIf;

    private SoakSection(SoakProof soak, Optional<Duration> whatIf) {
        this.soak = soak;
        this.whatIf = whatIf;
    }

    static ProofSection of(List<SoakProof> soaks, Optional<Duration> whatIf) {
        List<String> sentences = new ArrayList<>();
        List<SheetTable> tables = new ArrayList<>();
        List<Plot> plots = new ArrayList<>();
        for (SoakProof each : soaks) {
            SoakSection one = new SoakSection(each, whatIf);
            sentences.addAll(one.sentences());
            tables.add(Sections.table("soak", each.lengths(whatIf).stream().map(one::row).toList()));
            plots.add(one.curve());
            plots.add(one.hidden());
        }
        if (soaks.isEmpty()) {
            sentences.add(ProofText.of("soak.none"));
        } else if (soaks.size() > 1) {
            sentences.add(ProofText.of("soak.several"));
        }
        return new ProofSection(Subject.SOAK, ProofText.of("title." + Subject.SOAK), sentences,
                soaks.isEmpty() ? List.of() : Sections.texts("assume.rate", "assume.looks", "assume.station"), tables, plots);
    }

    private List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        SoakProof.Length own = soak.what(soak.lasting());
        if (!soak.latching()) {
            sentences.add(ProofText.of(soak.watched() ? "soak.watched" : "soak.restarts", soak.title()));
        }
        if (soak.latching() || soak.watched()) {
            sentences.add(ProofText.of("soak.reveals", soak.title(), Durations.words(soak.lasting()), Numbers.level(soak.probability()),
                    Numbers.cut(own.longestRevealed())));
        }
        soak.claim().ifPresent(claim -> sentences.add(ProofText.of(soak.supportsClaim() ? "soak.claimHolds" : "soak.claimFails",
                Durations.words(claim.meanInterval()), Numbers.level(soak.probability()), Numbers.chance(own.revealed()))));
        whatIf.filter(other -> !other.equals(soak.lasting())).map(soak::what).ifPresent(other -> sentences.add(ProofText.of("soak.whatIf",
                Durations.words(other.length()), Numbers.level(soak.probability()), Numbers.cut(other.longestRevealed()),
                Numbers.missed(other.hidden()),
                Numbers.cut(soak.meanInterval()), difference(other.stationTime()))));
        return sentences;
    }

    private String difference(Duration stationTime) {
        Duration more = stationTime.minus(soak.lasting());
        return ProofText.of(more.isNegative() ? "soak.less" : "soak.more", Durations.words(more.abs()));
    }

    private List<String> row(SoakProof.Length length) {
        String name = Durations.words(length.length());
        String mark = length.length().equals(soak.lasting()) ? " " + ProofText.of("soak.asWritten")
                : whatIf.filter(length.length()::equals).isPresent() ? " " + ProofText.of("soak.asked") : "";
        return List.of(name + mark, Numbers.cut(length.longestRevealed()), Numbers.chance(length.revealed()), Numbers.missed(length.hidden()),
                Durations.words(length.stationTime()), Integer.toString(length.looks()));
    }

    // ---- curves

    private Plot curve() {
        double longest = REACH * Math.max(SoakProof.hours(soak.lasting()), SoakProof.hours(soak.meanInterval()));
        List<Double> intervals = IntStream.rangeClosed(1, POINTS).mapToObj(i -> longest * i / POINTS).toList();
        List<Series> series = new ArrayList<>();
        // The soak as written is drawn through, another length dashed.
        lengths().forEach(length -> series.add(new Series(Durations.words(length), length.equals(soak.lasting()) ? Role.LINE : Role.LIMIT, intervals,
                intervals.stream().map(each -> 100 * soak.revealed(length, interval(each))).toList())));
        series.add(new Series(Numbers.level(soak.probability()), Role.STEPS, List.of(0.0, longest),
                List.of(100 * soak.probability(), 100 * soak.probability())));
        soak.claim().ifPresent(claim -> series.add(new Series(ProofText.of("plot.claim"), Role.SIGNALS,
                List.of(SoakProof.hours(claim.meanInterval())), List.of(100 * soak.probability()))));
        return new Plot(ProofText.of("plot.curve", soak.title()), ProofText.of("plot.interval"), ProofText.of("plot.revealed"), Plot.Scale.NUMBERS,
                List.of(), series);
    }

    private Plot hidden() {
        double longest = Math.max(120, 1.5 * lengths().mapToDouble(SoakProof::hours).max().orElse(0));
        List<Double> lengths = DoubleStream.iterate(0, each -> each <= longest, each -> each + longest / POINTS).boxed().toList();
        List<Series> series = new ArrayList<>();
        series.add(new Series(ProofText.of("plot.every", Numbers.cut(soak.meanInterval())), Role.LINE, lengths,
                lengths.stream().map(each -> 100 * (1 - soak.revealed(interval(each), soak.meanInterval()))).toList()));
        List<Double> told = lengths().map(SoakProof::hours).toList();
        series.add(new Series(ProofText.of("plot.told"), Role.SIGNALS, told,
                lengths().map(each -> 100 * (1 - soak.revealed(each, soak.meanInterval()))).toList()));
        return new Plot(ProofText.of("plot.hiddenTitle", soak.title()), ProofText.of("plot.length"), ProofText.of("plot.hidden"), Plot.Scale.NUMBERS,
                List.of(), series);
    }

    /** That of the text and the one that was asked for. */
    private Stream<Duration> lengths() {
        return Stream.concat(Stream.of(soak.lasting()), whatIf.stream()).distinct();
    }

    private static Duration interval(double hours) {
        return Duration.ofMillis(Math.round(hours * 3_600_000));
    }
}
