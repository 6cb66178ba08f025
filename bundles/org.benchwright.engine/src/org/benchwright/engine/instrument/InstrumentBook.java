package org.benchwright.engine.instrument;

import static org.benchwright.engine.internal.Refusals.require;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;

/**
 * The register of instruments as what was signed about them makes it. Whoever signs is asked here whether they may; whoever verifies asks
 * again. Immutable.
 */
public final class InstrumentBook {

    private static final Set<Role> MAY = EnumSet.of(Role.ENGINEER, Role.SUPERVISOR);
    private static final int LONGEST_TEXT = 200;
    private static final int MOST_RANGES = 50;

    private final Map<String, Instrument> instruments;

    private InstrumentBook(Map<String, Instrument> instruments) {
        this.instruments = instruments;
    }

    /** No instruments. */
    public static InstrumentBook empty() {
        return new InstrumentBook(Map.of());
    }

    /**
     * The book with one more event.
     *
     * @throws RefusedException if the signer may not, or the fact does not fit
     */
    public InstrumentBook with(InstrumentEvent event) throws RefusedException {
        require(event.person().isPresent() || event.bench(), "instrument.bench");
        require(event.person().isEmpty() || event.roles().stream().anyMatch(MAY::contains), "instrument.role", event.person().orElse(""));
        Instrument next = after(event, event.fact());
        Map<String, Instrument> all = new LinkedHashMap<>(instruments);
        all.put(key(next.asset()), next);
        return new InstrumentBook(all);
    }

    private Instrument after(InstrumentEvent event, InstrumentFact fact) throws RefusedException {
        Optional<Instrument> known = find(fact.asset());
        if (fact instanceof InstrumentFact.Added added) {
            require(known.isEmpty(), "instrument.there", added.asset());
            text(added.asset(), false);
            text(added.title(), false);
            text(added.serial(), true);
            text(added.custody(), true);
            ranges(added.ranges());
            return new Instrument(added.asset(), added.title(), added.serial(), added.ranges(), added.custody(), "", Optional.empty(),
                    Optional.empty(), Optional.empty(), event.number());
        }
        require(known.isPresent(), "instrument.unknown", fact.asset());
        Instrument i = known.get();
        if (fact instanceof InstrumentFact.Calibrated calibrated) {
            text(calibrated.certificate(), false);
            // One day for the zones of clocks.
            LocalDate latest = event.instant().atZone(ZoneOffset.UTC).toLocalDate().plusDays(1);
            require(!calibrated.on().isAfter(latest), "instrument.future", calibrated.on());
            require(calibrated.due().isEmpty() || calibrated.due().get().isAfter(calibrated.on()), "instrument.due", calibrated.on());
            ranges(calibrated.ranges());
            return new Instrument(i.asset(), i.title(), i.serial(), calibrated.ranges().isEmpty() ? i.ranges() : calibrated.ranges(), i.custody(),
                    calibrated.certificate(), Optional.of(calibrated.on()), calibrated.due(), i.retired(), event.number());
        } else if (fact instanceof InstrumentFact.Moved moved) {
            text(moved.custody(), false);
            return new Instrument(i.asset(), i.title(), i.serial(), i.ranges(), moved.custody(), i.certificate(), i.calibrated(), i.due(), i.retired(),
                    event.number());
        } else if (fact instanceof InstrumentFact.Retired retired) {
            require(i.retired().isEmpty(), "instrument.retired", i.asset(), i.retired().orElse(""));
            text(retired.reason(), false);
            return inService(i, Optional.of(retired.reason()), event.number());
        }
        require(i.retired().isPresent(), "instrument.inService", i.asset());
        text(((InstrumentFact.Reinstated) fact).reason(), false);
        return inService(i, Optional.empty(), event.number());
    }

    private static Instrument inService(Instrument i, Optional<String> retired, long statement) {
        return new Instrument(i.asset(), i.title(), i.serial(), i.ranges(), i.custody(), i.certificate(), i.calibrated(), i.due(), retired, statement);
    }

    private static void text(String text, boolean mayBeEmpty) throws RefusedException {
        boolean plain = text.length() <= LONGEST_TEXT && text.chars().noneMatch(Character::isISOControl) && text.equals(text.strip());
        require(plain && (mayBeEmpty || !text.isEmpty()), "instrument.text", LONGEST_TEXT);
    }

    private static void ranges(List<InstrumentRange> ranges) throws RefusedException {
        require(ranges.size() <= MOST_RANGES, "instrument.ranges", MOST_RANGES);
        for (InstrumentRange range : ranges) {
            boolean alike = range.from().unit().sameDimension(range.to().unit()) && range.from().unit().sameDimension(range.digit().unit());
            require(alike, "instrument.kinds", range.from(), range.to(), range.digit());
            require(range.from().compareTo(range.to()) < 0, "instrument.turned", range.from(), range.to());
            boolean positive = range.percent().signum() >= 0 && range.digits().signum() >= 0 && range.digit().value().signum() >= 0
                    && !range.digit().unit().hasOffset() && range.coverage().map(k -> k.signum() > 0).orElse(true);
            require(positive, "instrument.accuracy", range.words());
            require(Set.of("", "ac", "dc").contains(range.current()), "instrument.current", range.current());
        }
    }

    /** All instruments, in the order in which they were added. */
    public List<Instrument> all() {
        return new ArrayList<>(instruments.values());
    }

    /** The instrument of that asset number; letter case does not count. */
    public Optional<Instrument> find(String asset) {
        return Optional.ofNullable(instruments.get(key(asset)));
    }

    private static String key(String asset) {
        return asset.strip().toUpperCase(Locale.ROOT);
    }
}
