package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.ScannedText;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.RegisteredUncertainty;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.Workshop;

/**
 * Which instrument is used, as {@code M-17, 0.02 V, k 2, due 2027-03-01}: the asset number first, the rest in any order. Commas need a
 * blank behind them here, since a comma may stand in a number; semicolons do as well.
 */
public final class InstrumentEntry {

    private static final Pattern COVERAGE = Pattern.compile("[kK]\\s*=?\\s*([0-9]+(?:[.,][0-9]+)?)");
    private static final Pattern DUE = Pattern.compile("(?i)due\\s+(.+)");

    private String asset = "";
    private Optional<Quantity> uncertainty = Optional.empty();
    private Optional<BigDecimal> coverage = Optional.empty();
    private Optional<LocalDate> due = Optional.empty();
    private boolean dueTold;

    private InstrumentEntry() {
    }

    /** Where instruments are looked up. */
    @FunctionalInterface
    public interface Register {
        /** The instrument of that asset number. */
        Optional<Instrument> find(String asset) throws StoreException;
    }

    /**
     * The instrument that was named, if the register has it.
     *
     * @throws EntryRefusedException if more than its asset number was told: that is the register's to say
     */
    public static Optional<Fact> registered(Plan plan, InstrumentSpec spec, String typed, Register register)
            throws EntryRefusedException, StoreException {
        String[] parts = ScannedText.clean(typed).split(";\\s*|,\\s+", -1);
        Optional<Instrument> found = register.find(parts[0]);
        if (found.isEmpty()) {
            return Optional.empty();
        } else if (parts.length > 1) {
            throw new EntryRefusedException(HouseWords.INSTRUMENT_BY_HAND.text(found.get().asset()));
        }
        Instrument instrument = found.get();
        Optional<Quantity> uncertainty = RegisteredUncertainty.of(plan, spec, instrument.ranges());
        return Optional.of(new Observation.InstrumentNamed(spec.name(), instrument.asset(), uncertainty, spec.coverage(), instrument.due(),
                Optional.of(Workshop.entry(instrument))));
    }

    static Fact read(InstrumentSpec spec, String text) throws EntryRefusedException {
        InstrumentEntry entry = new InstrumentEntry();
        for (String part : text.split(";\\s*|,\\s+", -1)) {
            entry.part(part.strip());
        }
        return entry.fact(spec);
    }

    private void part(String part) throws EntryRefusedException {
        Matcher factor = COVERAGE.matcher(part);
        Matcher date = DUE.matcher(part);
        if (asset.isEmpty()) {
            asset = EntryReader.filled(part);
        } else if (factor.matches()) {
            coverage = Optional.of(new BigDecimal(factor.group(1).replace(',', '.')));
        } else if (TypedText.isOneOf(part, Message.WORDS_NO_DUE)) {
            dueTold = true;
        } else if (date.matches()) {
            due = Optional.of(date(date.group(1)));
            dueTold = true;
        } else {
            uncertainty = Optional.of(uncertainty(part));
        }
    }

    private static LocalDate date(String text) throws EntryRefusedException {
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeParseException e) {
            throw new EntryRefusedException(Message.REFUSED_DATE.text(text), e);
        }
    }

    private static Quantity uncertainty(String part) throws EntryRefusedException {
        try {
            return Quantity.parse(part);
        } catch (QuantityFormatException e) {
            throw new EntryRefusedException(Message.REFUSED_INSTRUMENT_PART.text(part), e);
        }
    }

    private Fact fact(InstrumentSpec spec) throws EntryRefusedException {
        if (uncertainty.isPresent() && coverage.isEmpty()) {
            throw new EntryRefusedException(Message.REFUSED_NO_COVERAGE.text());
        }
        if (!dueTold && uncertainty.isEmpty()) {
            throw new EntryRefusedException(Message.REFUSED_NOT_IN_REGISTER.text(asset, Questions.exampleOfUncertainty(spec)));
        } else if (!dueTold) {
            throw new EntryRefusedException(Message.REFUSED_NO_DUE.text());
        }
        return new Observation.InstrumentNamed(spec.name(), asset, uncertainty, coverage.orElse(spec.coverage()), due);
    }
}
