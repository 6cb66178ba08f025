package org.benchwright.watch;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Quantity;

/**
 * What a series of samples of one unit tells. A change lies between two samples; silence is not health; equal samples are one run. Holds
 * a run, not its samples, so that it is as large after a week as after a minute.
 *
 * <p>Used by one thread at a time; it waits for nothing and reads no clock.
 */
public final class Observation {

    /** Wall time and monotonic time may differ by as much within a run. */
    private static final Duration CLOCK_TOLERANCE = Duration.ofSeconds(1);

    private final WatchRhythm rhythm;
    private final Judge judge;
    private final List<Observed> told = new ArrayList<>();

    private boolean seeing;
    private boolean stopped;
    private boolean silenceTold;
    private Optional<Sample> last = Optional.empty();
    private Optional<Sample> lastGood = Optional.empty();
    private Optional<Sample> runFrom = Optional.empty();
    private long samples;
    private long missed;
    private final Map<String, Observed.Range> ranges = new LinkedHashMap<>();
    private int missedInRow;
    private int badInRow;
    private Optional<Sample> firstBad = Optional.empty();
    private String badShows = "";
    private final Map<String, Boolean> inside = new HashMap<>();

    /**
     * @param rhythm how the unit is watched
     * @param judge  what says of values whether a condition is inside
     */
    public Observation(WatchRhythm rhythm, Judge judge) {
        this.rhythm = rhythm;
        this.judge = judge;
    }

    /** True once a stop was told: there is nothing more to observe. */
    public boolean stopped() {
        return stopped;
    }

    /** True while the unit is seen as it must be. */
    public boolean seeing() {
        return seeing;
    }

    /**
     * A sample arrived.
     *
     * @return what is worth writing down, in order
     */
    public List<Observed> sample(Sample at, Judgement judgement) {
        if (!stopped) {
            boolean stepped = last.filter(before -> clockStepped(before, at)).isPresent();
            if (stepped) {
                // Time across the step cannot be told, so it is in no run.
                flush();
                runFrom = Optional.empty();
                last = Optional.empty();
            }
            if (judgement.good()) {
                good(at, judgement.conditions());
            }
            crossings(at, judgement.conditions());
            if (!judgement.good()) {
                bad(at, judgement.shows());
            }
            missedInRow = 0;
            silenceTold = false;
            last = Optional.of(at);
        }
        return drain();
    }

    /**
     * A sample that was due did not arrive.
     *
     * @param why what is in the way, in plain words
     * @return what is worth writing down, in order
     */
    public List<Observed> missed(String why) {
        missedInRow++;
        if (!stopped && missedInRow >= rhythm.silentAfter() && !silenceTold) {
            silent(why);
        }
        return drain();
    }

    /** The watch is ended: what it has seen so far, and that it sees no more. */
    public List<Observed> end(String why) {
        if (!stopped && !silenceTold) {
            silent(why);
        }
        stopped = true;
        return drain();
    }

    private void silent(String why) {
        blip();
        flush();
        told.add(new Observed.Silent(seeing ? last : Optional.empty(), why));
        silenceTold = true;
        seeing = false;
        last = Optional.empty();
        lastGood = Optional.empty();
        runFrom = Optional.empty();
        inside.clear();
    }

    private void good(Sample at, Map<String, Quantity> read) {
        blip();
        if (!seeing) {
            told.add(new Observed.Sees(at));
            seeing = true;
            restart(at, read);
        } else if (runFrom.isEmpty()) {
            restart(at, read);
        } else {
            samples++;
            missed += missedInRow;
            range(read);
        }
        lastGood = Optional.of(at);
        if (at.offset().minus(runFrom.orElseThrow().offset()).compareTo(rhythm.longestRun()) >= 0) {
            flush();
            restart(at, read);
        }
    }

    private void bad(Sample at, String shows) {
        if (badInRow == 0) {
            flush();
            runFrom = Optional.empty();
            firstBad = Optional.of(at);
            badShows = shows;
        }
        badInRow++;
        if (badInRow >= rhythm.stopAfterBad()) {
            told.add(new Observed.Changed(lastGood, firstBad.orElseThrow(), badInRow, true, badShows));
            stopped = true;
        }
    }

    /** Bad samples that were too few for a stop are told once they are over. */
    private void blip() {
        if (badInRow > 0) {
            told.add(new Observed.Changed(lastGood, firstBad.orElseThrow(), badInRow, false, badShows));
            badInRow = 0;
            firstBad = Optional.empty();
        }
    }

    /** Writes the run down as far as it goes, if it is any longer than one sample. */
    private void flush() {
        if (runFrom.isPresent() && lastGood.isPresent() && samples > 1) {
            told.add(new Observed.Held(runFrom.get(), lastGood.get(), samples, missed, ranges));
        }
    }

    private void restart(Sample at, Map<String, Quantity> read) {
        runFrom = Optional.of(at);
        samples = 1;
        missed = 0;
        ranges.clear();
        range(read);
    }

    private void range(Map<String, Quantity> read) {
        read.forEach((name, value) -> ranges.merge(name, new Observed.Range(value, value), (range, one) -> range.with(one.low())));
    }

    private void crossings(Sample at, Map<String, Quantity> read) {
        read.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(entry -> {
            String name = entry.getKey();
            boolean now = judge.inside(name, entry.getValue());
            if (inside.getOrDefault(name, true) != now) {
                told.add(new Observed.Crossed(name, now, inside.containsKey(name) ? last : Optional.empty(), at, entry.getValue()));
            }
            inside.put(name, now);
        });
    }

    private static boolean clockStepped(Sample before, Sample at) {
        Duration wall = Duration.between(before.received(), at.received());
        return wall.minus(at.offset().minus(before.offset())).abs().compareTo(CLOCK_TOLERANCE) > 0;
    }

    private List<Observed> drain() {
        List<Observed> out = List.copyOf(told);
        told.clear();
        return out;
    }
}
