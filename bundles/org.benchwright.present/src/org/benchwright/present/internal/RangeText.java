package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.ScannedText;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.instrument.InstrumentUse;
import org.benchwright.present.EntryRefusedException;

/** Ranges of instruments as people write them, such as {@code reads 0 V to 60 V dc, 0.05 % of reading + 2 digits of 0.01 V, k 2}. */
public final class RangeText {

    private static final String NUMBER = "([0-9]+(?:[.][0-9]+)?)";
    private static final Pattern RANGE = Pattern.compile("(reads|gives) ([^,]+?) to ([^,]+?)( ac| dc)?, " + NUMBER + " ?% ?(?:of (?:the )?reading )?\\+ ?" + NUMBER
            + " digits? of ([^,]+?)(?:, ?k ?=? ?" + NUMBER + ")?", Pattern.CASE_INSENSITIVE);

    private RangeText() {
    }

    /**
     * The ranges in these texts.
     *
     * @throws EntryRefusedException if one of them is none
     */
    public static List<InstrumentRange> all(List<String> texts) throws EntryRefusedException {
        List<InstrumentRange> ranges = new ArrayList<>();
        for (String text : texts) {
            String cleaned = ScannedText.clean(text).replaceAll("\\s+", " ");
            if (!cleaned.isEmpty()) {
                ranges.add(one(cleaned));
            }
        }
        return ranges;
    }

    private static InstrumentRange one(String text) throws EntryRefusedException {
        Matcher m = RANGE.matcher(text);
        if (!m.matches()) {
            throw new EntryRefusedException(HouseWords.RANGE_UNREAD.text(text));
        }
        try {
            InstrumentUse use = InstrumentUse.find(m.group(1).toLowerCase(Locale.ROOT)).orElseThrow();
            String current = m.group(4) == null ? "" : m.group(4).strip().toLowerCase(Locale.ROOT);
            return new InstrumentRange(use, current, Quantity.parse(m.group(2)), Quantity.parse(m.group(3)), new BigDecimal(m.group(5)), new BigDecimal(m.group(6)),
                    Quantity.parse(m.group(7)), Optional.ofNullable(m.group(8)).map(BigDecimal::new));
        } catch (QuantityFormatException e) {
            throw new EntryRefusedException(HouseWords.RANGE_UNREAD.text(text) + " " + e.getMessage(), e);
        }
    }
}
