package org.benchwright.report;

import java.time.Instant;
import java.util.List;
import org.benchwright.report.internal.TagPage;

/**
 * The tag on a unit: where it stands, for whoever comes by. It proves nothing and is no certificate.
 *
 * @param state    where it stands, in a word or two; printed large, in capitals
 * @param unit     serial number or tag; the square holds it alone, so that a scanner finds the unit
 * @param lines    family, order, since when, by whom
 * @param cautions what must not be done to it, and whom to ask; printed in a frame, mostly none
 */
public record UnitTag(String state, String unit, List<String> lines, List<String> cautions) {

    public UnitTag {
        lines = List.copyOf(lines);
        cautions = List.copyOf(cautions);
    }

    /**
     * The tag as a PDF/A file, 62 mm wide.
     *
     * @param now when it is printed
     */
    public byte[] pdf(Instant now) {
        return TagPage.pdf(this, now);
    }
}
