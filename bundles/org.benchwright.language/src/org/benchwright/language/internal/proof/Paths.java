package org.benchwright.language.internal.proof;

import java.math.BigInteger;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.language.internal.proof.Walk.Hop;
import org.benchwright.language.internal.proof.Walk.State;
import org.benchwright.language.proof.PathCount;
import org.benchwright.language.proof.ProofPath;

/** Counts paths exactly, and lists the first of them. */
final class Paths {

    private final Walk walk;
    private final Exploration explored;
    private final int most;
    private final List<ProofPath> listed = new ArrayList<>();

    private Paths(Walk walk, Exploration explored, int most) {
        this.walk = walk;
        this.explored = explored;
        this.most = most;
    }

    /** @param most how many are listed at most */
    static PathCount of(Walk walk, Exploration explored, int most) {
        if (!explored.isComplete()) {
            return new PathCount(Optional.empty(), Map.of(), explored.isEndless(), List.of());
        }
        Map<Verdict, BigInteger> ending = count(walk, explored);
        BigInteger all = ending.values().stream().reduce(BigInteger.ZERO, BigInteger::add);
        Paths paths = new Paths(walk, explored, most);
        paths.list(all);
        return new PathCount(Optional.of(all), ending, false, paths.listed);
    }

    private static Map<Verdict, BigInteger> count(Walk walk, Exploration explored) {
        Map<State, Map<Verdict, BigInteger>> counts = new HashMap<>();
        for (State state : explored.order()) {
            Map<Verdict, BigInteger> mine = new EnumMap<>(Verdict.class);
            for (Hop hop : explored.from(state)) {
                hop.verdict().ifPresent(verdict -> mine.merge(verdict, BigInteger.ONE, BigInteger::add));
                hop.to().ifPresent(to -> counts.get(to).forEach((verdict, many) -> mine.merge(verdict, many, BigInteger::add)));
            }
            counts.put(state, mine);
        }
        return counts.get(walk.start());
    }

    // ---- listing

    /** By how often they leave the straight way; within one number, the last place first. */
    private void list(BigInteger all) {
        for (int turns = 0; listed.size() < most && BigInteger.valueOf(listed.size()).compareTo(all) < 0; turns++) {
            listWith(turns);
        }
    }

    private record Branching(List<Hop> hops, State at, int turnsLeft, int[] next) {
    }

    private void listWith(int turns) {
        Deque<Branching> open = new ArrayDeque<>();
        Deque<Taken> taken = new ArrayDeque<>();
        open.push(branching(walk.start(), turns));
        while (!open.isEmpty() && listed.size() < most) {
            Branching here = open.peek();
            if (here.next()[0] == here.hops().size()) {
                open.pop();
                taken.pollLast();
                continue;
            }
            Hop hop = here.hops().get(here.next()[0]++);
            int left = here.turnsLeft() - (isTurn(hop, here.hops()) ? 1 : 0);
            if (left < 0) {
                continue;
            }
            if (hop.to().isPresent()) {
                taken.addLast(new Taken(here.at(), hop, isTurn(hop, here.hops())));
                open.push(branching(hop.to().get(), left));
            } else if (left == 0) {
                taken.addLast(new Taken(here.at(), hop, isTurn(hop, here.hops())));
                listed.add(path(taken));
                taken.pollLast();
            }
        }
    }

    /** A hop that was taken. */
    private record Taken(State from, Hop hop, boolean turn) {
    }

    /** The straight way first, so that what leaves it late comes first. */
    private Branching branching(State state, int turnsLeft) {
        List<Hop> hops = new ArrayList<>(explored.from(state));
        Collections.reverse(hops);
        return new Branching(hops, state, turnsLeft, new int[1]);
    }

    /** The straight way stands first; where there is only one way out, nothing was decided. */
    private static boolean isTurn(Hop hop, List<Hop> choices) {
        return hop != choices.get(0);
    }

    private ProofPath path(Deque<Taken> taken) {
        List<ProofPath.Turn> turns = taken.stream().filter(Taken::turn)
                .map(each -> new ProofPath.Turn(walk.spots().at(each.from().place()).shown(), each.hop().way().words())).toList();
        Hop last = taken.getLast().hop();
        int places = (int) taken.stream().filter(each -> each.from().place() != 0).count();
        return new ProofPath(turns, places, last.verdict().orElseThrow(), last.reason());
    }
}
