package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.core.QuantityFormatException.Problem;
import org.benchwright.core.internal.Message;

/** Why a text is no quantity, and what would have been one, as near to it as can be told. */
final class QuantityRefusal {

    private static final String DEFAULT_NUMBER = "23.9";
    private static final String DIGITS = "[0-9]+(?:[.,][0-9]+)?";
    private static final String GAP = "[ \\u00a0\\u2007\\u2009\\u202f'\\u2019]";
    private static final Pattern NUMBER_PART = Pattern.compile(QuantityParser.SIGN + "[0-9.,'\\u2019]*");
    private static final Pattern WHOLE_NUMBER = Pattern.compile("(" + QuantityParser.SIGN + ")(" + DIGITS + ")");
    private static final Pattern GAPS = Pattern.compile(QuantityParser.SIGN + "[0-9]+(?:" + GAP + "[0-9]+)+.*");
    private static final Pattern THOUSANDS = Pattern.compile(
            "(" + QuantityParser.SIGN + ")([0-9]{1,3}(?:" + GAP + "[0-9]{3})+(?:[.,][0-9]+)?)" + QuantityParser.BLANK + "*(.*)");
    private static final Pattern POWER_OF_TEN = Pattern.compile(
            "(" + QuantityParser.SIGN + ")(" + DIGITS + ")[eE]([+-]?[0-9]{1,2})" + QuantityParser.BLANK + "*(.*)");
    /** IEC 60062: 4k7 is 4.7 kohm, 4R7 is 4.7 ohm. */
    private static final Pattern UNIT_FOR_POINT = Pattern.compile("(" + QuantityParser.SIGN + ")([0-9]+)(\\p{L})([0-9]+)");
    /** What displays show that can't show a reading. */
    private static final Pattern OUT_OF_RANGE = Pattern.compile("(?i)[+\\-<>]?\\s*(?:[O0]\\.?L\\.?|\\.[O0]L|OVLD|OVER(?:[ -]?(?:LOAD|FLOW|RANGE))?|\\u221e|-{2,})(?:\\s.{0,8})?");
    private static final Pattern KIND_OF_CURRENT = Pattern.compile("(?i)(.*?)" + QuantityParser.BLANK + "*(?:dc|ac|rms)");

    private final String text;
    private final Optional<UnitOfMeasure> assumed;

    QuantityRefusal(String text, Optional<UnitOfMeasure> assumed) {
        this.text = text;
        this.assumed = assumed;
    }

    /** What is wrong with a text that is neither empty nor too long and whose unit, if it has one, is not known. */
    Problem problem() {
        String number = numberPart();
        boolean digits = number.chars().anyMatch(c -> c >= '0' && c <= '9');
        if (OUT_OF_RANGE.matcher(text).matches()) {
            return Problem.OUT_OF_RANGE;
        } else if (GAPS.matcher(text).matches()) {
            return Problem.GROUPED_DIGITS;
        } else if (number.chars().filter(c -> c == '.' || c == ',').count() > 1) {
            return Problem.TWO_SEPARATORS;
        } else if (!digits) {
            return Problem.NOT_A_NUMBER;
        } else if (POWER_OF_TEN.matcher(text).matches()) {
            return Problem.POWER_OF_TEN;
        } else if (unitForPoint().isPresent()) {
            return Problem.UNIT_FOR_POINT;
        }
        return WHOLE_NUMBER.matcher(number).matches() ? Problem.UNKNOWN_UNIT : Problem.BARE_SEPARATOR;
    }

    QuantityFormatException because(Problem problem) {
        return switch (problem) {
            case EMPTY -> refused(problem, Message.QUANTITY_EMPTY.text(), example(DEFAULT_NUMBER));
            case TOO_LONG -> refused(problem, Message.QUANTITY_TOO_LONG.text(Integer.toString(QuantityParser.LONGEST)), example(DEFAULT_NUMBER));
            case NOT_A_NUMBER -> refused(problem, Message.QUANTITY_NOT_A_NUMBER.text(text), example(DEFAULT_NUMBER));
            case TWO_SEPARATORS -> refused(problem, Message.QUANTITY_TWO_SEPARATORS.text(text), example(DEFAULT_NUMBER));
            case OUT_OF_RANGE -> refused(problem, Message.QUANTITY_OUT_OF_RANGE.text(text), example(DEFAULT_NUMBER));
            case GROUPED_DIGITS -> refused(problem, Message.QUANTITY_GROUPED.text(text), withoutGaps());
            case POWER_OF_TEN -> refused(problem, Message.QUANTITY_POWER_OF_TEN.text(text), writtenOut());
            case UNIT_FOR_POINT -> refused(problem, Message.QUANTITY_UNIT_FOR_POINT.text(text), unitForPoint().orElseThrow());
            case BARE_SEPARATOR -> refused(problem, Message.QUANTITY_BARE_SEPARATOR.text(text), example(separated()));
            case NO_UNIT -> refused(problem, Message.QUANTITY_NO_UNIT.text(text), example(number()));
            case OTHER_DIMENSION -> refused(problem, Message.QUANTITY_OTHER_DIMENSION.text(text, word()), example(number()));
            case UNKNOWN_UNIT -> unknownUnit();
        };
    }

    private QuantityFormatException refused(Problem problem, String words, String example) {
        return new QuantityFormatException(problem, words, example);
    }

    private String numberPart() {
        Matcher start = NUMBER_PART.matcher(text);
        return start.lookingAt() ? start.group() : "";
    }

    /** The number that the text begins with, or else any. */
    private String number() {
        Matcher whole = WHOLE_NUMBER.matcher(numberPart());
        return whole.matches() ? plain(QuantityParser.number(whole.group(1), whole.group(2))) : DEFAULT_NUMBER;
    }

    private String word() {
        return assumed.map(UnitOfMeasure::word).orElse("V");
    }

    private String example(String number) {
        return number + " " + word();
    }

    /** In the unit that was written, where that will do. */
    private String example(String number, String written) {
        return number + " " + fitting(written).map(UnitOfMeasure::word).orElseGet(this::word);
    }

    private Optional<UnitOfMeasure> fitting(String written) {
        return UnitOfMeasure.find(written.strip()).filter(unit -> assumed.isEmpty() || assumed.get().sameDimension(unit));
    }

    private static String plain(BigDecimal number) {
        return (number.scale() < 0 ? number.setScale(0) : number).toPlainString();
    }

    // ---- numbers that are written otherwise

    /** Groups of three are thousands; any other gap may stand between two readings. */
    private String withoutGaps() {
        Matcher thousands = THOUSANDS.matcher(text);
        return thousands.matches() ? example(plain(QuantityParser.number(thousands.group(1), thousands.group(2).replaceAll(GAP, ""))), thousands.group(3))
                : example(DEFAULT_NUMBER);
    }

    private String writtenOut() {
        Matcher power = POWER_OF_TEN.matcher(text);
        boolean near = power.matches() && Math.abs(Integer.parseInt(power.group(3))) <= 12;
        return near ? example(plain(QuantityParser.number(power.group(1), power.group(2)).scaleByPowerOfTen(Integer.parseInt(power.group(3)))), power.group(4))
                : example(DEFAULT_NUMBER);
    }

    private Optional<String> unitForPoint() {
        Matcher parts = UNIT_FOR_POINT.matcher(text);
        if (!parts.matches()) {
            return Optional.empty();
        }
        String letter = parts.group(3);
        String number = plain(QuantityParser.number(parts.group(1), parts.group(2) + "." + parts.group(4)));
        String prefix = letter.equals("K") ? "k" : letter.equalsIgnoreCase("R") ? "" : letter;
        return Stream.of(letter, prefix + "ohm", prefix + word()).flatMap(each -> fitting(each).stream()).findFirst().map(unit -> number + " " + unit.word());
    }

    /** With a nought, or nothing, where the digit is missing. */
    private String separated() {
        String number = numberPart().replace(',', '.').replaceAll("[\\u2212\\u2013]", "-").replaceAll("\\+|['\\u2019]", "");
        String mended = number.replaceFirst("^(-?)\\.", "$10.").replaceFirst("\\.$", "");
        return mended.matches("-?[0-9]+(?:\\.[0-9]+)?") ? mended : DEFAULT_NUMBER;
    }

    // ---- units

    private QuantityFormatException unknownUnit() {
        String word = text.substring(numberPart().length()).strip();
        Matcher current = KIND_OF_CURRENT.matcher(word);
        Optional<UnitOfMeasure> near = current.matches() ? fitting(current.group(1)) : UnitOfMeasure.words().stream()
                .filter(known -> known.equalsIgnoreCase(word)).flatMap(known -> fitting(known).stream()).findFirst();
        return near.map(unit -> refused(Problem.UNKNOWN_UNIT, Message.QUANTITY_UNKNOWN_UNIT_NEAR.text(word, unit.word()), number() + " " + unit.word()))
                .orElseGet(() -> refused(Problem.UNKNOWN_UNIT, Message.QUANTITY_UNKNOWN_UNIT.text(word), example(number())));
    }
}
