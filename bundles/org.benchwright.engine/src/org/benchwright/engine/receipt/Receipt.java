package org.benchwright.engine.receipt;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchwright.core.Actor;

/**
 * A unit that came in, as it was last said.
 *
 * @param number    number of the event that received it; it names the receipt
 * @param instant   when it came in
 * @param by        who received it
 * @param statement number of the event that said last how it came in
 * @param said      what was said
 * @param left      why it left without a test, if it did
 */
public record Receipt(long number, Instant instant, Actor by, long statement, ReceiptFact.Received said, Optional<String> left) {

    private static final Pattern NAME = Pattern.compile("(?i)R-([1-9][0-9]{0,17})");

    /** What people call it, such as {@code R-17}. */
    public String name() {
        return name(number);
    }

    /** What people call the receipt of that number. */
    public static String name(long number) {
        return "R-" + number;
    }

    /** The number in what people call a receipt; empty if it is no such name. */
    public static OptionalLong number(String name) {
        Matcher matcher = NAME.matcher(name.strip());
        return matcher.matches() ? OptionalLong.of(Long.parseLong(matcher.group(1))) : OptionalLong.empty();
    }

    Receipt corrected(long by, ReceiptFact.Received to) {
        return new Receipt(number, instant, this.by, by, to, left);
    }

    Receipt givenBack(String reason) {
        return new Receipt(number, instant, by, statement, said, Optional.of(reason));
    }
}
