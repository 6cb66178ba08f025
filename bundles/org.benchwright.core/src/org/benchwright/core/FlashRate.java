package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;

/** How fast a lamp flashes: in no particular way, in one of the two bands of IEC 60073, or around a stated rate. */
public sealed interface FlashRate {

    /**
     * The rates that are meant.
     *
     * @return closed limits in Hz, or nothing when any flashing will do
     */
    Optional<Limits> band();

    /**
     * The rate as the procedure language writes it.
     *
     * @return empty, {@code slow}, {@code normal} or {@code 1 Hz tolerance 20 %}
     */
    String words();

    /**
     * Whether a rate belongs here.
     *
     * @param rate how often the lamp lights up, in Hz or another unit of frequency
     * @return true in the band, ends included; any rate above zero when there is no band
     * @throws IllegalArgumentException when the rate is no frequency
     */
    default boolean accepts(Quantity rate) {
        requireFrequency(rate);
        return rate.value().signum() > 0 && band().map(band -> band.contains(rate)).orElse(true);
    }

    /** Flashing at whatever rate. */
    record Any() implements FlashRate {
        @Override
        public Optional<Limits> band() {
            return Optional.empty();
        }

        @Override
        public String words() {
            return "";
        }
    }

    /** The slow band of IEC 60073: 24 to 48 flashes per minute, 0.4 to 0.8 Hz. */
    record Slow() implements FlashRate {
        @Override
        public Optional<Limits> band() {
            return Optional.of(Limits.between(Quantity.of("0.4", "Hz"), Quantity.of("0.8", "Hz")));
        }

        @Override
        public String words() {
            return "slow";
        }
    }

    /** The normal band of IEC 60073: 84 to 168 flashes per minute, 1.4 to 2.8 Hz. */
    record Normal() implements FlashRate {
        @Override
        public Optional<Limits> band() {
            return Optional.of(Limits.between(Quantity.of("1.4", "Hz"), Quantity.of("2.8", "Hz")));
        }

        @Override
        public String words() {
            return "normal";
        }
    }

    /**
     * A stated rate, as some makers give it.
     *
     * @param rate the rate, above zero
     * @param tolerancePercent how far off on either side, in percent of the rate, 0 to less than 100
     */
    record Around(Quantity rate, BigDecimal tolerancePercent) implements FlashRate {

        private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

        /**
         * Checks both.
         *
         * @throws IllegalArgumentException when the rate is no frequency above zero or the tolerance out of range
         */
        public Around {
            Objects.requireNonNull(tolerancePercent);
            requireFrequency(rate);
            if (rate.value().signum() <= 0) {
                throw new IllegalArgumentException("A flash rate is above zero: " + rate);
            }
            if (tolerancePercent.signum() < 0 || tolerancePercent.compareTo(HUNDRED) >= 0) {
                throw new IllegalArgumentException("A flash rate's tolerance is from 0 to less than 100 %: "
                        + tolerancePercent.toPlainString());
            }
        }

        @Override
        public Optional<Limits> band() {
            return Optional.of(Limits.around(rate, tolerancePercent, tolerancePercent));
        }

        @Override
        public String words() {
            return rate + " tolerance " + tolerancePercent.toPlainString() + " %";
        }
    }

    private static void requireFrequency(Quantity rate) {
        rate.unit().requireSameDimension(UnitOfMeasure.of("Hz"));
    }
}
