package org.benchwright.watch.internal;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Optional;

import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;

/** Numbers out of the bytes of an answer, exact to the last digit. */
final class RegisterNumbers {

    private RegisterNumbers() {
    }

    /**
     * The number of a point.
     *
     * @param data  the answer's bytes: bits packed from the lowest up, or registers of two bytes each, high byte first
     * @param first the address that the answer begins with
     * @return empty if it is no number: a float may be none
     */
    static Optional<BigDecimal> of(PointAddress.Register point, byte[] data, int first) {
        int at = point.number() - first;
        if (point.form() == NumberForm.BIT) {
            return Optional.of(BigDecimal.valueOf(data[at / 8] >> at % 8 & 1));
        }
        byte[] bytes = new byte[point.form().registers() * 2];
        for (int register = 0; register < point.form().registers(); register++) {
            int from = 2 * (at + register);
            int to = 2 * (point.lowFirst() ? point.form().registers() - 1 - register : register);
            bytes[to] = data[from + (point.swapped() ? 1 : 0)];
            bytes[to + 1] = data[from + (point.swapped() ? 0 : 1)];
        }
        BigInteger signed = new BigInteger(bytes);
        return switch (point.form()) {
            case SIGNED_16, SIGNED_32, SIGNED_64 -> Optional.of(new BigDecimal(signed));
            case FLOAT_32 -> finite(Float.intBitsToFloat(signed.intValue()), Float.toString(Float.intBitsToFloat(signed.intValue())));
            case FLOAT_64 -> finite(Double.longBitsToDouble(signed.longValue()), Double.toString(Double.longBitsToDouble(signed.longValue())));
            default -> Optional.of(new BigDecimal(new BigInteger(1, bytes)));
        };
    }

    /** The shortest decimal that means this float, and none else. */
    private static Optional<BigDecimal> finite(double value, String digits) {
        return Double.isFinite(value) ? Optional.of(new BigDecimal(digits)) : Optional.empty();
    }
}
