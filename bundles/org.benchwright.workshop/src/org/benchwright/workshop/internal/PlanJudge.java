package org.benchwright.workshop.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WatchMap;
import org.benchwright.engine.plan.WatchPoint;
import org.benchwright.watch.Judge;
import org.benchwright.watch.Judgement;
import org.benchwright.watch.PointValues;

/**
 * What the points of a family say of a soak: whether the unit is in the mode that it must keep, by the mode's own points and by those of the
 * lamps that show it. A lamp that flashes is not looked at: samples are too far apart to tell.
 */
public final class PlanJudge implements Judge {

    private static final PointAddress NO_POINT = new PointAddress.ServerState();

    private final Map<String, Condition> conditions = new HashMap<>();
    private final List<Wanted> wanted = new ArrayList<>();
    private final List<WatchPoint> modes;
    private final List<WatchPoint> reads;

    /**
     * @param what     what has to read so, in words
     * @param address  where
     * @param value    the value
     * @param holds    true if it has to read that value, false if any other
     */
    private record Wanted(String what, PointAddress address, BigDecimal value, boolean holds) {
        boolean by(PointValues values) {
            return (values.values().get(address).compareTo(value) == 0) == holds;
        }
    }

    /** @param soak a soak of a procedure for that family */
    public PlanJudge(UnitFamily family, SoakStage soak) {
        List<WatchPoint> points = family.watch().map(WatchMap::points).orElse(List.of());
        soak.conditions().forEach(condition -> conditions.put(condition.name(), condition));
        Set<String> kept = new LinkedHashSet<>();
        collect(soak.keep(), kept);
        modes = points.stream().filter(point -> point.meaning() instanceof WatchPoint.InMode).toList();
        for (WatchPoint point : modes) {
            WatchPoint.InMode mode = (WatchPoint.InMode) point.meaning();
            if (kept.contains(mode.mode())) {
                wanted.add(new Wanted(Message.WATCH_MODE.text(mode.mode()), point.address(), mode.value(), true));
            }
        }
        for (WatchPoint point : points) {
            if (point.meaning() instanceof WatchPoint.LampLit lamp) {
                lamps(soak.keep()).filter(shown -> shown.source().equals(lamp.lamp()) && !(shown.pattern() instanceof LampPattern.Flashing))
                        .forEach(shown -> wanted.add(new Wanted(Message.WATCH_LAMP.text(shown.marked(), shown.pattern().words()), point.address(),
                                lamp.value(), !(shown.pattern() instanceof LampPattern.Off))));
            }
        }
        reads = points.stream().filter(point -> point.meaning() instanceof WatchPoint.Reads r && conditions.containsKey(r.condition())).toList();
    }

    private static void collect(Signal.ModeShows mode, Set<String> names) {
        names.add(mode.source());
        mode.shows().stream().filter(Signal.ModeShows.class::isInstance).forEach(inner -> collect((Signal.ModeShows) inner, names));
    }

    private static Stream<Signal.LampShows> lamps(Signal signal) {
        if (signal instanceof Signal.ModeShows mode) {
            return mode.shows().stream().flatMap(PlanJudge::lamps);
        }
        return signal instanceof Signal.LampShows lamp ? Stream.of(lamp) : Stream.empty();
    }

    /** True if some point tells whether the unit is as it must be. */
    public boolean canTell() {
        return !wanted.isEmpty();
    }

    @Override
    public List<PointAddress> points() {
        Stream<PointAddress> all = Stream.concat(wanted.stream().map(Wanted::address),
                Stream.concat(modes.stream(), reads.stream()).map(WatchPoint::address));
        return wanted.isEmpty() ? List.of(NO_POINT) : all.distinct().toList();
    }

    @Override
    public Judgement judge(PointValues values) {
        if (wanted.isEmpty()) {
            return new Judgement(values.values().get(NO_POINT).signum() == 0, Message.WATCH_SIMULATED_STOP.text(), Map.of());
        }
        List<Wanted> missing = wanted.stream().filter(one -> !one.by(values)).toList();
        Map<String, Quantity> read = new HashMap<>();
        for (WatchPoint point : reads) {
            WatchPoint.Reads r = (WatchPoint.Reads) point.meaning();
            read.put(r.condition(), new Quantity(values.values().get(point.address()).multiply(r.scale()).add(r.offset()), r.unit()));
        }
        return new Judgement(missing.isEmpty(), shows(missing, values), read);
    }

    private String shows(List<Wanted> missing, PointValues values) {
        List<String> words = new ArrayList<>();
        missing.forEach(one -> words.add(Message.WATCH_NOT.text(one.what(), values.values().get(one.address()).toPlainString())));
        modes.stream().filter(point -> values.values().get(point.address()).compareTo(((WatchPoint.InMode) point.meaning()).value()) == 0)
                .forEach(point -> words.add(Message.WATCH_MODE.text(((WatchPoint.InMode) point.meaning()).mode())));
        return String.join("; ", words);
    }

    @Override
    public boolean inside(String condition, Quantity value) {
        return conditions.get(condition).limits().contains(value);
    }

    @Override
    public PointValues simulated(boolean good) {
        Map<PointAddress, BigDecimal> values = new HashMap<>();
        points().forEach(address -> values.put(address, BigDecimal.ZERO));
        for (WatchPoint point : reads) {
            WatchPoint.Reads r = (WatchPoint.Reads) point.meaning();
            BigDecimal middle = middle(conditions.get(r.condition()).limits()).subtract(r.offset());
            values.put(point.address(), r.scale().signum() == 0 ? BigDecimal.ZERO : middle.divide(r.scale(), 3, RoundingMode.HALF_UP));
        }
        wanted.forEach(one -> values.put(one.address(), one.holds() == good ? one.value() : other(one)));
        if (wanted.isEmpty() && !good) {
            values.put(NO_POINT, BigDecimal.ONE);
        }
        return new PointValues(values);
    }

    private static BigDecimal other(Wanted one) {
        boolean bit = one.address() instanceof PointAddress.Register register && register.form() == NumberForm.BIT;
        return bit ? BigDecimal.ONE.subtract(one.value()) : one.value().add(BigDecimal.ONE);
    }

    private static BigDecimal middle(Limits limits) {
        BigDecimal low = limits.lower().or(limits::upper).orElseThrow().exactIn(limits.unit());
        BigDecimal high = limits.upper().or(limits::lower).orElseThrow().exactIn(limits.unit());
        return low.add(high).divide(BigDecimal.valueOf(2));
    }
}
