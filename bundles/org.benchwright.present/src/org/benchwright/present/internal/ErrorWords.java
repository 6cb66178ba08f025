package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.Quantity;
import org.benchwright.engine.record.InstrumentError;
import org.benchwright.present.EntryRefusedException;

/** How an instrument reads wrong, in a person's words. */
public final class ErrorWords {

    private static final Pattern WORDS = Pattern.compile("\\s*(\\S.{0,40}?)\\s+(?:too\\s+)?(high|low)\\s*", Pattern.CASE_INSENSITIVE);
    private static final Pattern PERCENT = Pattern.compile("(\\d{1,3}(?:[.,]\\d{1,9})?)\\s*%");

    private ErrorWords() {
    }

    /**
     * Reads {@code 0.12 V too high} or {@code 0.3 % low}: a size without a sign, and which way.
     *
     * @throws EntryRefusedException if it is anything else
     */
    public static InstrumentError read(String words) throws EntryRefusedException {
        Matcher matcher = WORDS.matcher(words);
        if (!matcher.matches()) {
            throw new EntryRefusedException(Message.IMPACT_READS.text(words));
        }
        boolean high = matcher.group(2).toLowerCase(Locale.ROOT).equals("high");
        String size = matcher.group(1);
        Matcher percent = PERCENT.matcher(size);
        try {
            if (percent.matches()) {
                BigDecimal gain = new BigDecimal(percent.group(1).replace(',', '.'));
                return new InstrumentError.Gain(high ? gain : gain.negate());
            }
            Quantity offset = Quantity.parse(size);
            if (offset.value().signum() < 0) {
                throw new EntryRefusedException(Message.IMPACT_READS.text(words));
            }
            return new InstrumentError.Offset(high ? offset : offset.negate());
        } catch (IllegalArgumentException noSize) {
            throw new EntryRefusedException(Message.IMPACT_READS.text(words), noSize);
        }
    }
}
