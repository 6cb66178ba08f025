package org.benchwright.core;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

import javax.measure.Dimension;
import javax.measure.Unit;
import javax.measure.UnitConverter;

import org.benchwright.core.internal.Fraction;
import org.benchwright.core.internal.Message;
import org.benchwright.core.internal.UnitCatalogue;

/**
 * A unit of measure by the word that the shop uses for it: {@code V}, {@code mA}, {@code kohm}, {@code degC}, {@code %}.
 *
 * <p>Words are case-sensitive ({@code mohm} and {@code Mohm} are a factor of 10<sup>9</sup> apart). Dimension and size
 * come from a JSR 385 units library; conversions are then reckoned without rounding.
 */
public final class UnitOfMeasure {

    private static final Map<String, UnitOfMeasure> BY_WORD = UnitCatalogue.withLibrary(UnitOfMeasure::catalogue);
    private static final Map<String, String> OTHER_SPELLINGS = Map.copyOf(UnitCatalogue.otherSpellings());

    private final String word;
    private final Dimension dimension;
    private final Fraction size;
    private final BigDecimal zeroPoint;

    private UnitOfMeasure(String word, Unit<?> unit) {
        this.word = word;
        this.dimension = unit.getDimension();
        UnitConverter toCoherent = toCoherentUnit(unit);
        this.zeroPoint = new BigDecimal(toCoherent.convert(Integer.valueOf(0)).toString());
        Number one = toCoherent.convert(Integer.valueOf(1));
        this.size = zeroPoint.signum() == 0 ? Fraction.of(one)
                : Fraction.of(new BigDecimal(one.toString()).subtract(zeroPoint));
    }

    private UnitOfMeasure(UnitOfMeasure above, UnitOfMeasure below) {
        this.word = above.word + "/" + below.word;
        this.dimension = UnitCatalogue.withLibrary(() -> above.dimension.divide(below.dimension));
        this.size = above.size.through(below.size);
        this.zeroPoint = BigDecimal.ZERO;
    }

    /**
     * Looks a word up, case-sensitively.
     *
     * @param word a shop word, one of the usual spellings with special letters (&micro;A, &Omega;, &deg;C), or one through another, such as
     *             {@code mV/K} and {@code A/us}; temperatures are differences in those, and so in K
     * @return the unit, or nothing when the word is not known
     */
    public static Optional<UnitOfMeasure> find(String word) {
        UnitOfMeasure known = BY_WORD.get(OTHER_SPELLINGS.getOrDefault(word, word));
        return known == null ? quotient(word) : Optional.of(known);
    }

    private static Optional<UnitOfMeasure> quotient(String word) {
        int through = word.indexOf('/');
        if (through < 0 || word.indexOf('/', through + 1) >= 0) {
            return Optional.empty();
        }
        Optional<UnitOfMeasure> below = find(word.substring(through + 1)).filter(unit -> !unit.hasOffset());
        return find(word.substring(0, through)).filter(unit -> !unit.hasOffset())
                .flatMap(above -> below.map(unit -> new UnitOfMeasure(above, unit)));
    }

    /**
     * Looks a word up that is known to be good.
     *
     * @param word a shop word
     * @return the unit
     * @throws IllegalArgumentException when the word is not known
     */
    public static UnitOfMeasure of(String word) {
        return find(word).orElseThrow(() -> new IllegalArgumentException(Message.UNIT_UNKNOWN.text(word)));
    }

    /**
     * All shop words.
     *
     * @return the words in the order in which they are offered
     */
    public static Set<String> words() {
        return BY_WORD.keySet();
    }

    /**
     * The word that finds this unit again.
     *
     * @return the shop word, in ASCII
     */
    public String word() {
        return word;
    }

    /**
     * Whether quantities of both units can be converted into each other.
     *
     * @param other another unit
     * @return true for V and mV, degC and K, % and ppm
     */
    public boolean sameDimension(UnitOfMeasure other) {
        return dimension.equals(other.dimension);
    }

    /**
     * Whether the unit's zero is not the quantity's zero. Differences, tolerances and percentages must not be given in
     * such a unit: a tolerance of 2 degC is a mistake, 2 K is meant.
     *
     * @return true for degC
     */
    public boolean hasOffset() {
        return zeroPoint.signum() != 0;
    }

    /**
     * Converts a number exactly.
     *
     * @throws ArithmeticException when the result has no end as a decimal number (1 s in h)
     */
    BigDecimal convertExactly(BigDecimal value, UnitOfMeasure target) {
        return numerator(value, target).divide(denominator(target));
    }

    /** Converts a number exactly where it can be written down, else rounded to 34 digits. */
    BigDecimal convert(BigDecimal value, UnitOfMeasure target) {
        try {
            return convertExactly(value, target);
        } catch (ArithmeticException endless) {
            return numerator(value, target).divide(denominator(target), MathContext.DECIMAL128);
        }
    }

    /**
     * The unit in which differences of quantities in this unit are given.
     *
     * @return a unit of the same size without an offset: K for degC, else this one
     */
    public UnitOfMeasure forDifferences() {
        if (!hasOffset()) {
            return this;
        }
        return BY_WORD.values().stream()
                .filter(candidate -> sameDimension(candidate) && !candidate.hasOffset() && candidate.size.equals(size))
                .findFirst().orElseThrow();
    }

    /**
     * The unit in which both kinds of quantities can be written without rounding: 1 h is 3600 s, but 1 s is no finite
     * decimal number of hours.
     *
     * @param other a unit of the same dimension
     * @return the smaller of the two; this one when they are of the same size
     * @throws IllegalArgumentException when the dimension is another
     */
    public UnitOfMeasure finer(UnitOfMeasure other) {
        UnitOfMeasure thisStep = forDifferences();
        UnitOfMeasure otherStep = other.forDifferences();
        return compare(BigDecimal.ONE, otherStep, BigDecimal.ONE, thisStep) < 0 ? other : this;
    }

    /** Compares two numbers in their units without rounding. */
    static int compare(BigDecimal left, UnitOfMeasure leftUnit, BigDecimal right, UnitOfMeasure rightUnit) {
        return leftUnit.numerator(left, rightUnit).compareTo(right.multiply(leftUnit.denominator(rightUnit)));
    }

    void requireSameDimension(UnitOfMeasure other) {
        if (!sameDimension(other)) {
            throw new IllegalArgumentException(Message.UNIT_OTHER_DIMENSION.text(word, other.word));
        }
    }

    private BigDecimal numerator(BigDecimal value, UnitOfMeasure target) {
        requireSameDimension(target);
        BigDecimal shift = zeroPoint.subtract(target.zeroPoint).multiply(new BigDecimal(size.denominator()));
        return value.multiply(new BigDecimal(size.numerator())).add(shift)
                .multiply(new BigDecimal(target.size.denominator()));
    }

    private BigDecimal denominator(UnitOfMeasure target) {
        return new BigDecimal(size.denominator().multiply(target.size.numerator()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UnitOfMeasure that && word.equals(that.word);
    }

    @Override
    public int hashCode() {
        return Objects.hash(word);
    }

    /**
     * The shop word.
     *
     * @return {@link #word()}
     */
    @Override
    public String toString() {
        return word;
    }

    private static Map<String, UnitOfMeasure> catalogue() {
        Map<String, UnitOfMeasure> catalogue = new LinkedHashMap<>();
        UnitCatalogue.words().forEach((word, unit) -> catalogue.put(word, new UnitOfMeasure(word, unit)));
        return Collections.unmodifiableMap(catalogue);
    }

    // The library's generic signature can't express "a unit and the coherent unit of its own kind".
    @SuppressWarnings({ "unchecked", "rawtypes" })
    private static UnitConverter toCoherentUnit(Unit<?> unit) {
        return ((Unit) unit).getConverterTo(unit.getSystemUnit());
    }
}
