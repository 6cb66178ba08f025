package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.require;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;

/** What a register entry comes to at a step: whether the instrument has the range for it, and its uncertainty there. */
public final class RegisterRules {

    private RegisterRules() {
    }

    /**
     * The values that an instrument has to cope with in a plan: the range that is asked for and the ends of the limits of what it decides.
     */
    static List<Quantity> needed(Plan plan, InstrumentSpec spec) {
        List<Quantity> values = new ArrayList<>(spec.range().stream().toList());
        Stream<Limits> before = plan.preconditions().stream().filter(p -> p.instrument().equals(Optional.of(spec.name()))).flatMap(p -> p.reading().stream());
        Stream<Limits> within = Instruments.actions(plan).flatMap(action -> limits(action, spec.name()).stream());
        Stream.concat(before, within).forEach(limits -> {
            limits.lower().ifPresent(values::add);
            limits.upper().ifPresent(values::add);
        });
        return values;
    }

    private static Optional<Limits> limits(Action action, String instrument) {
        return action instanceof Action.Measure m && m.instrument().equals(instrument) ? Optional.of(m.limits()) : Optional.empty();
    }

    /**
     * The uncertainty of an instrument where it is largest among what it has to cope with.
     *
     * @param ranges what it can do
     * @return empty if it has to cope with nothing, or can't
     */
    public static Optional<Quantity> uncertainty(Plan plan, InstrumentSpec spec, List<InstrumentRange> ranges) {
        return needed(plan, spec).stream().flatMap(value -> at(ranges, value, spec.coverage()).stream()).reduce((a, b) -> a.compareTo(b) >= 0 ? a : b);
    }

    /** The uncertainty at a value; empty where it has no range for it. The most accurate of several ranges counts. */
    static Optional<Quantity> at(List<InstrumentRange> ranges, Quantity value, BigDecimal coverage) {
        return ranges.stream().filter(range -> range.covers(value)).map(range -> range.expanded(value, coverage)).min(Quantity::compareTo);
    }

    /** Refuses an instrument that its register entry speaks against. */
    static void check(Plan plan, InstrumentSpec spec, Observation.InstrumentNamed named) throws RefusedException {
        Observation.RegisterEntry entry = named.entry().orElseThrow();
        require(entry.retired().isEmpty(), "register.outOfService", named.asset(), entry.retired().orElse(""));
        List<InstrumentRange> fitting = fitting(spec, entry.ranges());
        String ranges = entry.ranges().isEmpty() ? Words.of("register.noRanges") : entry.ranges().stream().map(InstrumentRange::words).collect(Collectors.joining("; "));
        for (Quantity value : needed(plan, spec)) {
            boolean covered = fitting.stream().anyMatch(range -> range.covers(value));
            String means = spec.means().map(what -> Words.of("register.oneThat", what)).orElseGet(() -> Words.of("register.one"));
            if (readsBlind(plan, spec) && !spec.range().equals(Optional.of(value))) {
                // The value that it does not reach is the end of a limit, which whoever reads blind is not to know.
                require(covered, "register.noRangeBlind", named.asset(), means, ranges);
            }
            require(covered, "register.noRange", named.asset(), means, value, ranges);
        }
        Optional<Quantity> uncertainty = uncertainty(plan, spec, fitting);
        boolean same = named.uncertainty().equals(uncertainty) && (uncertainty.isEmpty() || named.coverage().compareTo(spec.coverage()) == 0);
        require(same, "register.uncertainty", named.asset(), uncertainty.map(Quantity::toString).orElse("-"), spec.coverage().toPlainString(),
                named.uncertainty().map(Quantity::toString).orElse("-"));
    }

    private static boolean readsBlind(Plan plan, InstrumentSpec spec) {
        return Instruments.actions(plan).anyMatch(action -> action instanceof Action.Measure m && m.instrument().equals(spec.name()) && m.blind());
    }

    /** The ranges of an entry that do what a plan asks of an instrument. */
    public static List<InstrumentRange> fitting(InstrumentSpec spec, List<InstrumentRange> ranges) {
        return ranges.stream().filter(range -> means(spec, range)).toList();
    }

    /** A plan says {@code reads V dc}; a range that leaves out whether ac or dc does for both. */
    private static boolean means(InstrumentSpec spec, InstrumentRange range) {
        String means = spec.means().orElse("");
        boolean use = means.isEmpty() || means.startsWith(range.use().word() + " ");
        boolean current = range.current().isEmpty() || !means.endsWith(" ac") && !means.endsWith(" dc") || means.endsWith(" " + range.current());
        return use && current;
    }
}
