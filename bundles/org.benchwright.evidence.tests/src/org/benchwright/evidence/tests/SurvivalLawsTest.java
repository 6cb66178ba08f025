package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.LogRank;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.WeibullFit;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SurvivalLawsTest implements PropertyTest {

    @Provide
    Arbitrary<List<Lifetime>> groups() {
        return Combinators.combine(Arbitraries.integers().between(1, 40), Arbitraries.of(true, true, false))
                .as((time, failed) -> new Lifetime(time, failed)).list().ofMinSize(2).ofMaxSize(30);
    }

    @Property(tries = 300)
    void theCurveOnlyFallsAndLimitsHoldIt(@ForAll("groups") List<Lifetime> group) {
        double before = 1;
        for (SurvivalCurve.Step step : SurvivalCurve.of(group).steps()) {
            Proportion.Interval limits = step.limits(0.9);
            Proportion.Interval wider = step.limits(0.95);
            assertTrue(0 <= step.survival() && step.survival() < before);
            assertTrue(limits.lower() <= step.survival() && step.survival() <= limits.upper());
            assertTrue(wider.lower() <= limits.lower() && limits.upper() <= wider.upper());
            before = step.survival();
        }
    }

    @Property(tries = 300)
    void whenAllFailTheCurveCountsTheSurvivors(@ForAll("groups") List<Lifetime> group) {
        List<Lifetime> failed = group.stream().map(each -> Lifetime.failedAt(each.time())).toList();
        SurvivalCurve curve = SurvivalCurve.of(failed);
        for (double time = 0; time <= 41; time++) {
            double now = time;
            double surviving = failed.stream().filter(each -> each.time() > now).count();
            assertEquals(surviving / failed.size(), curve.at(time), 1e-12);
        }
    }

    @Property(tries = 300)
    void theLogRankTestDoesNotCareWhichGroupIsFirst(@ForAll("groups") List<Lifetime> one,
            @ForAll("groups") List<Lifetime> other) {
        Assume.that(one.stream().anyMatch(each -> each.failed() && each.time() < 20));
        Assume.that(one.stream().anyMatch(each -> each.time() > 20) && other.stream().anyMatch(each -> each.time() > 20));
        LogRank test = LogRank.of(one, other);
        assertEquals(test.statistic(), LogRank.of(other, one).statistic(), 1e-9 * (1 + test.statistic()));
        assertEquals(test.expected() + LogRank.of(other, one).expected(),
                test.observed() + LogRank.of(other, one).observed(), 1e-9);
        assertTrue(0 <= test.probability() && test.probability() <= 1 + 1e-12);
    }

    @Property(tries = 100)
    void noOtherWeibullDistributionIsLikelier(@ForAll("groups") List<Lifetime> group) {
        Assume.that(group.stream().filter(Lifetime::failed).mapToDouble(Lifetime::time).distinct().count() > 1);
        WeibullFit fit = WeibullFit.of(group);
        for (double factor : new double[] { 0.99, 1.01 }) {
            assertTrue(logLikelihood(group, fit.shape() * factor, fit.scales().get(0)) <= fit.logLikelihood() + 1e-9);
            assertTrue(logLikelihood(group, fit.shape(), fit.scales().get(0) * factor) <= fit.logLikelihood() + 1e-9);
        }
        assertEquals(logLikelihood(group, fit.shape(), fit.scales().get(0)), fit.logLikelihood(), 1e-6);
    }

    private static double logLikelihood(List<Lifetime> group, double shape, double scale) {
        return group.stream().mapToDouble(each -> {
            double scaled = each.time() / scale;
            double density = each.failed() ? Math.log(shape) - Math.log(scale) + (shape - 1) * Math.log(scaled) : 0;
            return density - Math.pow(scaled, shape);
        }).sum();
    }
}
