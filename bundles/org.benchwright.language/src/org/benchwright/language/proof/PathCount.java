package org.benchwright.language.proof;

import java.math.BigInteger;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Verdict;

/**
 * How many paths lead through a procedure. A path is what decides at each place where the test goes on: two differ where another check
 * fails, another event comes or another answer is given. Ways with a bound are taken as often as that allows. A release that is given,
 * measuring again, voided checks and interruptions make no path of their own, nor does making safe, which follows on each.
 *
 * @param count   the exact number; empty where it can't be told
 * @param ending  of those, how many end in each verdict, in their order; empty where the number can't be told
 * @param endless whether a test could go round without an end, so that there is no number
 * @param listed  the first of them: the straight one, then those that leave it once, then twice and so on
 */
public record PathCount(Optional<BigInteger> count, Map<Verdict, BigInteger> ending, boolean endless, List<ProofPath> listed) {
    public PathCount {
        ending = ending.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(ending));
        listed = List.copyOf(listed);
    }

    /** How many paths there are beside those listed; empty where it can't be told. */
    public Optional<BigInteger> more() {
        return count.map(all -> all.subtract(BigInteger.valueOf(listed.size())));
    }
}
