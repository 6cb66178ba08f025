package org.benchwright.present;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.core.DurationFormatException;
import org.benchwright.core.Durations;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.internal.Message;

/**
 * When the tests of a batch are begun: one after the other, so that not all units switch on, or need a look, at once. It plans, and begins
 * nothing.
 *
 * @param apart  the least time between one start and the next; more than nothing
 * @param starts what is still to be begun, the next one first
 */
public record BatchStart(Duration apart, List<Start> starts) {

    /** More than a day apart nobody waits at a bench. */
    public static final Duration LONGEST = Duration.ofHours(24);

    private static final String LISTED = "[,;\r\n]+";
    private static final String BLANKS = "[\\s\\u00a0\\u202f]+";

    /**
     * One start.
     *
     * @param serial the unit's serial number
     * @param due    when its test is to be begun, at the earliest
     */
    public record Start(String serial, Instant due) {

        /**
         * When it begins, in a person's words: {@code begins 14:35, in 4 min}.
         *
         * @param zone in which times are shown
         */
        public String words(Instant now, ZoneId zone) {
            if (!due.isAfter(now)) {
                return Message.BATCH_BEGINS_NOW.text();
            }
            return Message.BATCH_BEGINS.text(new WallTime(zone).near(due, now), Durations.words(readable(Duration.between(now, due))));
        }

        /** Nobody waits for less than it says. */
        private static Duration readable(Duration left) {
            ChronoUnit unit = left.compareTo(Duration.ofMinutes(1)) > 0 ? ChronoUnit.MINUTES : ChronoUnit.SECONDS;
            return left.plus(unit.getDuration()).minusNanos(1).truncatedTo(unit);
        }
    }

    public BatchStart {
        starts = List.copyOf(starts);
    }

    /**
     * Plans a batch.
     *
     * @param serials in the order in which they begin
     * @param first   when the first one begins; each of the others follows at the distance
     */
    public static BatchStart of(List<String> serials, Duration apart, Instant first) {
        return new BatchStart(apart, IntStream.range(0, serials.size()).mapToObj(i -> new Start(serials.get(i), first.plus(apart.multipliedBy(i)))).toList());
    }

    /**
     * Serial numbers that were typed, pasted or scanned one behind the other. Commas, semicolons and line breaks part them; blanks do too,
     * except where the family's serial numbers have blanks in them.
     *
     * @param plan of the family that the units are of
     * @return one at least, in the order in which they were given
     * @throws EntryRefusedException if there is none, one is not taken as a serial number, or one was given twice
     */
    public static List<String> serials(String typed, Plan plan) throws EntryRefusedException {
        Set<String> serials = new LinkedHashSet<>();
        for (String listed : typed.split(LISTED)) {
            for (String part : isOne(listed, plan) ? new String[] {listed} : listed.split(BLANKS)) {
                if (!part.isBlank() && !serials.add(Bench.serial(part).text())) {
                    throw new EntryRefusedException(Message.BATCH_TWICE.text(part.strip()));
                }
            }
        }
        if (serials.isEmpty()) {
            throw new EntryRefusedException(Message.BATCH_NONE.text());
        }
        return List.copyOf(serials);
    }

    private static boolean isOne(String listed, Plan plan) {
        return plan.family().serialMask().filter(mask -> mask.accepts(listed.strip())).isPresent();
    }

    /** What comes before the first comma, semicolon or line break: one serial number, or several with blanks between them. */
    public static String firstListed(String typed) {
        return Stream.of(typed.split(LISTED)).map(String::strip).filter(part -> !part.isEmpty()).findFirst().orElse("");
    }

    /**
     * The first serial number as it was typed, of which nothing was checked yet; empty where nothing was typed.
     *
     * @param plan of the family that {@link #firstListed} looks like
     */
    public static String first(String typed, Plan plan) {
        String listed = firstListed(typed);
        return isOne(listed, plan) ? listed : listed.split(BLANKS)[0];
    }

    /** True if more than one serial number seems to have been typed; which they are is told by {@link #serials}. */
    public static boolean several(String typed) {
        return typed.strip().split(LISTED + "|" + BLANKS).length > 1;
    }

    /**
     * The distance between one start and the next.
     *
     * @param typed such as {@code 5 min}
     * @throws EntryRefusedException if it is no length of time, nothing at all, or longer than {@link #LONGEST}
     */
    public static Duration apart(String typed) throws EntryRefusedException {
        try {
            Duration apart = Durations.parse(typed);
            if (apart.isNegative() || apart.isZero() || apart.compareTo(LONGEST) > 0) {
                throw new EntryRefusedException(Message.BATCH_APART.text(typed.strip(), Durations.words(LONGEST)));
            }
            return apart;
        } catch (DurationFormatException e) {
            throw new EntryRefusedException(Message.BATCH_NO_APART.text(e.getMessage()), e);
        }
    }

    /**
     * Asked before anything of a batch is begun: a unit whose serial number doesn't look like the family's is tested alone, where what was said of
     * its plate counts.
     *
     * @param plan  by which this unit will be tested
     * @param first by which the first of the batch will be
     * @throws EntryRefusedException if its family is another one, or its serial number doesn't look like that family's
     */
    public static void requireFits(String serial, Plan plan, Plan first) throws EntryRefusedException {
        if (!plan.family().name().equals(first.family().name())) {
            throw new EntryRefusedException(Message.BATCH_FAMILY.text(serial, plan.family().title(), first.family().title()));
        }
        Optional<SerialMask> mask = plan.family().serialMask().filter(looks -> !looks.accepts(serial));
        if (mask.isPresent()) {
            throw new EntryRefusedException(Message.BATCH_MASK.text(serial, mask.get().mask(), plan.family().title()));
        }
    }

    /**
     * Asked of every unit of a batch before anything is begun, and again when it is due.
     *
     * @param open      the open tests
     * @param rehearsal true if it is to be rehearsed; a rehearsal and a test of one unit are in nobody's way
     * @throws EntryRefusedException if a test of that unit is open already: it would be taken out of somebody's hands
     */
    public static void requireNotOpen(String serial, boolean rehearsal, List<UnitRow> open) throws EntryRefusedException {
        Optional<UnitRow> there = open.stream().filter(unit -> unit.serial().equals(serial) && unit.rehearsal() == rehearsal).findFirst();
        if (there.isPresent()) {
            throw new EntryRefusedException(Message.BATCH_OPEN.text(serial, there.get().test()));
        }
    }

    /** The start that is to be begun now; empty as long as none is due. Never more than one: what is late keeps its distance too. */
    public Optional<Start> due(Instant now) {
        return starts.stream().findFirst().filter(start -> !start.due().isAfter(now));
    }

    /**
     * What is left after one has begun, whether it was due or begun by hand: none of the others begins nearer to it than the distance, and no earlier
     * than it was to.
     */
    public BatchStart begun(String serial, Instant at) {
        List<Start> left = new ArrayList<>();
        Instant earliest = at.plus(apart);
        for (Start start : without(serial).starts()) {
            Instant due = start.due().isBefore(earliest) ? earliest : start.due();
            left.add(new Start(start.serial(), due));
            earliest = due.plus(apart);
        }
        return new BatchStart(apart, left);
    }

    /** What is left if that one is not begun; the others keep their times. */
    public BatchStart without(String serial) {
        return new BatchStart(apart, starts.stream().filter(start -> !start.serial().equals(serial)).toList());
    }
}
