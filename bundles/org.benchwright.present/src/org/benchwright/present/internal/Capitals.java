package org.benchwright.present.internal;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.UnitOfMeasure;

/** Instructions in capitals, but for units of measure: 5 mA in capitals would be a billion times as much. */
public final class Capitals {

    private static final Pattern QUANTITY = Pattern.compile("(?<![\\p{L}\\p{N}])[0-9]+(?:[.,][0-9]+)?[ \\u00a0]?([\\p{L}%\\u00b0/]+)");

    private Capitals() {
    }

    /** The text in capitals, quantities as they are. */
    public static String of(String text) {
        StringBuilder out = new StringBuilder();
        Matcher quantities = QUANTITY.matcher(text);
        int done = 0;
        while (quantities.find()) {
            if (UnitOfMeasure.find(quantities.group(1)).isPresent()) {
                out.append(text.substring(done, quantities.start()).toUpperCase(Locale.ROOT)).append(quantities.group());
                done = quantities.end();
            }
        }
        return out.append(text.substring(done).toUpperCase(Locale.ROOT)).toString();
    }
}
