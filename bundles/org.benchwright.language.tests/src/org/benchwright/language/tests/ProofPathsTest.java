package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.time.Duration;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.Plan;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.SoakProof;
import org.benchwright.language.proof.TimeSpan;
import org.benchwright.language.proof.Times;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of what a procedure proves; paths are counted against the engine itself, which goes all of them. */
class ProofPathsTest implements PropertyTest {

    private static final int MOST = 1_500;

    private static ProcedureProof prove(Plan plan) {
        return new Provable(plan, Map.of()).prove(Cancellation.never());
    }

    @Property(tries = 150)
    void thereAreAsManyPathsAsTheEngineGoes(@ForAll @IntRange(max = 1_000_000) int seed) {
        Plan plan = RandomPlans.of(seed);
        Optional<Map<Verdict, Integer>> gone = EnginePaths.count(plan, MOST);
        Assume.that(gone.isPresent());
        ProcedureProof proof = prove(plan);
        Map<Verdict, BigInteger> expected = new EnumMap<>(Verdict.class);
        gone.get().forEach((verdict, many) -> expected.put(verdict, BigInteger.valueOf(many)));
        assertEquals(expected, proof.paths().ending());
        assertEquals(Optional.of(expected.values().stream().reduce(BigInteger.ZERO, BigInteger::add)), proof.paths()
                .count());
    }

    @Property(tries = 150)
    void noPathIsListedTwiceAndNoneTooMany(@ForAll @IntRange(max = 1_000_000) int seed) {
        ProcedureProof proof = prove(RandomPlans.of(seed));
        int listed = proof.paths().listed().size();
        assertTrue(listed == 60 || proof.paths().more().orElseThrow()
                .signum() == 0, "all are listed, or as many as are listed at most");
        assertEquals(listed, new HashSet<>(proof.paths().listed()).size(), () -> "each is another one: " + proof.paths()
                .listed());
        for (int i = 1; i < listed; i++) {
            assertTrue(proof.paths().listed().get(i - 1).turns().size() <= proof.paths().listed().get(i).turns().size());
        }
        assertTrue(proof.paths().listed().stream().filter(path -> path.turns().isEmpty()).count() == 1, "one is straight");
        if (listed < 60) {
            proof.paths().ending().forEach((verdict, many) -> assertEquals(many.intValueExact(),
                    proof.paths().listed().stream().filter(path -> path.verdict() == verdict).count()));
        }
    }

    @Property(tries = 150)
    void typicalLiesBetweenShortestAndLongest(@ForAll @IntRange(max = 1_000_000) int seed) {
        Times times = prove(RandomPlans.of(seed)).times();
        TimeSpan typical = times.typical().orElseThrow();
        Times.Range range = times.byVerdict().get(times.verdict().orElseThrow());
        assertEquals(range.shortest(), range.shortest().shorter(typical));
        assertEquals(range.longest(), range.longest().longer(typical));
        times.byVerdict().values().forEach(each -> {
            assertEquals(each.shortest(), each.shortest().shorter(each.longest()));
            assertTrue(each.shortest().bench().compareTo(each.shortest().attended()) >= 0, "nobody attends an empty place");
        });
    }

    @Property(tries = 200)
    void theLongerASoakTheMoreItReveals(@ForAll @IntRange(min = 1, max = 500) int hours,
            @ForAll @IntRange(min = 1, max = 100) int more,
            @ForAll @IntRange(min = 1, max = 2_000) int interval,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double level) {
        Claim claim = new Claim(Duration.ofHours(interval), java.math.BigDecimal.valueOf(level));
        SoakProof soak = new SoakProof("s", "S", Duration.ofHours(hours), true, false, Duration.ofHours(24),
                Optional.of(claim));
        SoakProof.Length longer = soak.what(Duration.ofHours(hours + more));
        SoakProof.Length own = soak.what(Duration.ofHours(hours));
        assertTrue(longer.revealed() >= own.revealed() && longer.longestRevealed().compareTo(own.longestRevealed()) > 0);
        assertTrue(longer.looks() >= own.looks() && longer.stationTime().compareTo(own.stationTime()) > 0);
        assertTrue(soak.revealed(Duration.ofHours(hours), Duration.ofHours(interval + more)) <= own.revealed());
        assertEquals(own.revealed() >= level, soak.supportsClaim());
        assertEquals(soak.lengths(Optional.of(Duration.ofHours(hours))).size(), new HashSet<>(soak.lengths(Optional.empty()))
                .size());
    }
}
