package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

import org.benchwright.evidence.AnalysisOfVariance;
import org.benchwright.evidence.BenchCapacity;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.Drift;
import org.benchwright.evidence.GoodnessOfFit;
import org.benchwright.evidence.IntervalFit;
import org.benchwright.evidence.Pareto;
import org.benchwright.evidence.RunRules;
import org.benchwright.evidence.SequentialSoak;
import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.TurnbullCurve;
import org.benchwright.evidence.VarianceSplit;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

class FleetLawsTest implements PropertyTest {

    @Provide
    Arbitrary<List<StopInterval>> soaks() {
        Arbitrary<Integer> looks = Arbitraries.integers().between(0, 5);
        return Combinators.combine(looks, looks, Arbitraries.of(true, false)).as((one, other, stopped) -> {
            double after = 24 * Math.min(one, other);
            return stopped ? new StopInterval(after, 24 * (Math.max(one, other) + 1)) : StopInterval.never(after);
        }).list().ofMinSize(1).ofMaxSize(25);
    }

    @Property(tries = 200)
    void weightsAddUpAndTheCurveOnlyFalls(@ForAll("soaks") List<StopInterval> soaks) {
        TurnbullCurve curve = TurnbullCurve.of(soaks);
        assertEquals(1, curve.masses().stream().mapToDouble(TurnbullCurve.Mass::weight).sum(), 1e-6);
        double before = 1;
        for (double time = 0; time <= 150; time += 6) {
            OptionalDouble now = curve.at(time);
            assertTrue(now.isEmpty() || now.getAsDouble() <= before + 1e-9);
            before = now.orElse(before);
        }
    }

    /** Changing how weight is spread makes what was seen less likely. */
    @Property(tries = 200)
    void noOtherWeightsAreLikelier(@ForAll("soaks") List<StopInterval> soaks, @ForAll @IntRange(max = 20) int from,
            @ForAll @IntRange(max = 20) int to) {
        List<TurnbullCurve.Mass> masses = TurnbullCurve.of(soaks).masses();
        List<TurnbullCurve.Mass> moved = new ArrayList<>(masses);
        int giver = from % masses.size();
        int taker = to % masses.size();
        Assume.that(giver != taker);
        double part = masses.get(giver).weight() * 0.01;
        moved.set(giver, with(masses.get(giver), masses.get(giver).weight() - part));
        moved.set(taker, with(masses.get(taker), masses.get(taker).weight() + part));
        assertTrue(likelihood(moved, soaks) <= likelihood(masses, soaks) + 1e-6);
    }

    private static TurnbullCurve.Mass with(TurnbullCurve.Mass mass, double weight) {
        return new TurnbullCurve.Mass(mass.after(), mass.by(), weight);
    }

    private static double likelihood(List<TurnbullCurve.Mass> masses, List<StopInterval> soaks) {
        return soaks.stream().mapToDouble(soak -> Math.log(masses.stream()
                .filter(mass -> mass.after() >= soak.after() && mass.by() <= soak.by()).mapToDouble(TurnbullCurve.Mass::weight).sum()))
                .sum();
    }

    @Property(tries = 100)
    void likelihoodLimitsNestAndHoldTheEstimate(@ForAll("soaks") List<StopInterval> soaks) {
        Assume.that(soaks.stream().anyMatch(StopInterval::stopped) && soaks.stream().anyMatch(soak -> soak.after() > 0));
        double mean = IntervalFit.exponential(soaks).scale();
        IntervalFit.Range inner = IntervalFit.meanTimeLimits(soaks, 0.90);
        IntervalFit.Range outer = IntervalFit.meanTimeLimits(soaks, 0.95);
        assertTrue(outer.lower() < inner.lower() && inner.lower() < mean && mean < inner.upper() && inner.upper() <= outer.upper());
    }

    /** Whatever looks tell, there is a shape between its limits, or none is told; and nothing else happens. */
    @Property(tries = 100)
    void aShapeLiesBetweenItsLimitsOrIsNotTold(@ForAll("soaks") List<StopInterval> soaks) {
        try {
            double shape = IntervalFit.weibull(soaks).shape();
            IntervalFit.Range limits = IntervalFit.shapeLimits(soaks, 0.95);
            assertTrue(0 <= limits.lower() && limits.lower() < shape && shape < limits.upper(), limits::toString);
            double probability = GoodnessOfFit.constantRate(soaks).probability();
            assertTrue(0 <= probability && probability <= 1);
        } catch (IllegalArgumentException undetermined) {
            assertTrue(undetermined.getMessage().length() > 20, undetermined.getMessage());
        }
    }

    @Property(tries = 60)
    void moreStationsWaitLessAndTurnFewerAway(@ForAll @IntRange(min = 1, max = 20) int stations,
            @ForAll @DoubleRange(min = 0.1, max = 0.95) double busy) {
        BenchCapacity bench = new BenchCapacity(stations, busy * stations);
        BenchCapacity larger = new BenchCapacity(stations + 1, busy * stations);
        assertTrue(larger.turnedAway() < bench.turnedAway());
        assertTrue(larger.meanWait() <= bench.meanWait() + 1e-9);
        assertTrue(bench.meanWait() >= 0);
    }

    /** To within what the acceptance is good to. */
    @Property(tries = 40)
    void longerMeanTimesAreAcceptedMoreOften(@ForAll @DoubleRange(min = 60, max = 1500) double meanTime,
            @ForAll @DoubleRange(min = 1.3, max = 4) double ratio) {
        SequentialSoak plan = new SequentialSoak(100 * ratio, 100, 0.1, 0.1);
        Assume.that(plan.acceptAfter() + plan.rejectBehind() < 24 * meanTime);
        double now = plan.acceptance(meanTime);
        assertTrue(0 <= now && now <= plan.acceptance(meanTime * 1.1) + 1e-6 && now <= 1);
        assertTrue(plan.expectedTime(meanTime) > 0);
    }

    @Property
    void runRulesDoNotCareWhichSideIsUp(@ForAll @Size(min = 2, max = 40) List<@DoubleRange(min = -4, max = 4) Double> points) {
        List<RunRules.Signal> signals = RunRules.signals(new ControlChart(points, -3, 0, 3), RunRules.westernElectric());
        List<Double> mirrored = points.stream().map(point -> -point).toList();
        assertEquals(signals, RunRules.signals(new ControlChart(mirrored, -3, 0, 3), RunRules.westernElectric()));
    }

    @Property
    void aShiftOrAnotherUnitChangesNoProbability(@ForAll @Size(min = 4, max = 30) List<@DoubleRange(min = -9, max = 9) Double> readings,
            @ForAll @DoubleRange(min = -50, max = 50) double shift, @ForAll @DoubleRange(min = 0.1, max = 50) double factor) {
        Assume.that(readings.stream().distinct().count() > 3);
        List<Double> other = readings.stream().map(reading -> factor * reading + shift).toList();
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            times.add((double) i);
        }
        assertEquals(Drift.of(times, readings).probability(), Drift.of(times, other).probability(), 1e-6);
        int half = readings.size() / 2;
        assertEquals(twoHalves(readings, half), twoHalves(other, half), 1e-6);
    }

    private static double twoHalves(List<Double> readings, int half) {
        return AnalysisOfVariance.of(List.of(readings.subList(0, half), readings.subList(half, readings.size()))).probability();
    }

    /** Balanced and crossed: the parts add up to what the analysis of variance says. */
    @Property(tries = 200)
    void theSplitOfTwoCrossedFactorsIsThatOfTheTextbook(@ForAll @Size(12) List<@DoubleRange(min = -9, max = 9) Double> readings) {
        Assume.that(readings.stream().distinct().count() > 6);
        List<VarianceSplit.Reading> all = new ArrayList<>();
        List<List<Double>> persons = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        List<List<Double>> stations = List.of(new ArrayList<>(), new ArrayList<>());
        for (int i = 0; i < 12; i++) {
            all.add(new VarianceSplit.Reading(readings.get(i), List.of("p" + i % 3, "s" + i % 2)));
            persons.get(i % 3).add(readings.get(i));
            stations.get(i % 2).add(readings.get(i));
        }
        AnalysisOfVariance byPerson = AnalysisOfVariance.of(persons);
        AnalysisOfVariance byStation = AnalysisOfVariance.of(stations);
        double left = byPerson.between() + byPerson.within() - byPerson.between() - byStation.between();
        double rest = left / 8;
        VarianceSplit split = VarianceSplit.of(all);
        assertEquals(rest, split.components().get(2), 1e-9);
        assertEquals((byPerson.between() / 2 - rest) / 4, split.components().get(0), 1e-9);
        assertEquals((byStation.between() - rest) / 6, split.components().get(1), 1e-9);
    }

    @Property
    void paretoFallsAndAddsUp(@ForAll @Size(max = 12) Map<String, @IntRange(max = 50) Integer> counts) {
        Map<String, Long> longs = new HashMap<>();
        counts.forEach((name, count) -> longs.put(name, (long) count));
        Pareto pareto = Pareto.of(longs);
        long before = Long.MAX_VALUE;
        for (Pareto.Bar bar : pareto.bars()) {
            assertTrue(bar.count() <= before && bar.count() > 0);
            before = bar.count();
        }
        assertEquals(pareto.total(), pareto.bars().stream().mapToLong(Pareto.Bar::count).sum());
        assertTrue(pareto.bars().isEmpty() || pareto.bars().get(pareto.bars().size() - 1).cumulative() == 1);
    }
}
