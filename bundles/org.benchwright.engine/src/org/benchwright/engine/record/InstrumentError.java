package org.benchwright.engine.record;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

import org.benchwright.core.Quantity;

/** By how much an instrument reads wrong. */
public sealed interface InstrumentError {

    /**
     * What a reading should have been.
     *
     * @return nothing where the error is one of another kind of quantity
     */
    Optional<Quantity> corrected(Quantity reading);

    /**
     * It reads wrong by the same everywhere.
     *
     * @param tooHigh by how much it reads too high; too low where negative. A difference, not a point on a scale
     */
    record Offset(Quantity tooHigh) implements InstrumentError {
        public Offset {
            if (tooHigh.unit().hasOffset()) {
                throw new IllegalArgumentException("an error is a difference, not a point on a scale: " + tooHigh);
            }
        }

        @Override
        public Optional<Quantity> corrected(Quantity reading) {
            return reading.unit().sameDimension(tooHigh.unit()) ? Optional.of(reading.minus(tooHigh)) : Optional.empty();
        }
    }

    /**
     * It reads wrong by the same part of the reading everywhere. What it should have read is given to four digits more than it was read to.
     *
     * @param percentHigh by how many hundredths of the true value it reads too high; too low where negative, above -100
     */
    record Gain(BigDecimal percentHigh) implements InstrumentError {
        private static final BigDecimal WHOLE = BigDecimal.valueOf(100);
        private static final int MORE_DIGITS = 4;

        public Gain {
            if (percentHigh.add(WHOLE).signum() <= 0) {
                throw new IllegalArgumentException("nothing reads lower than nothing: " + percentHigh + " %");
            }
        }

        @Override
        public Optional<Quantity> corrected(Quantity reading) {
            BigDecimal right = reading.value().multiply(WHOLE).divide(WHOLE.add(percentHigh),
                    new MathContext(reading.value().precision() + MORE_DIGITS, RoundingMode.HALF_EVEN));
            return Optional.of(new Quantity(right.stripTrailingZeros(), reading.unit()));
        }
    }
}
