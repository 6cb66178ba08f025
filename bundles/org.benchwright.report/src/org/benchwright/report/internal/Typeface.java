package org.benchwright.report.internal;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A font that is embedded, and how much room words take in it. What it has no sign for is shown as a sign for that. */
final class Typeface {

    private static final int BYTE_ORDER_MARK = 0xFEFF;
    private static final String FOLDER = "net/sf/jasperreports/fonts/dejavu/";
    private static final String UNKNOWN = "\uFFFD";
    private static final String CUT = "\u2026";

    private final PDType0Font font;
    private final Map<Integer, Boolean> known = new HashMap<>();

    private Typeface(PDType0Font font) {
        this.font = font;
    }

    /** The upright font. */
    static Typeface regular(PDDocument document) throws IOException {
        return load(document, "DejaVuSansCondensed.ttf");
    }

    /** The bold font. */
    static Typeface bold(PDDocument document) throws IOException {
        return load(document, "DejaVuSansCondensed-Bold.ttf");
    }

    private static Typeface load(PDDocument document, String file) throws IOException {
        try (InputStream stream = Typeface.class.getClassLoader().getResourceAsStream(FOLDER + file)) {
            if (stream == null) {
                throw new IOException("the font " + file + " is missing");
            }
            return new Typeface(PDType0Font.load(document, stream, true));
        }
    }

    PDType0Font font() {
        return font;
    }

    /**
     * The text as this font can show it: no control characters, no sign that it lacks, no mark of byte order, which ISO 19005-3, 6.2.11.7.2,
     * forbids.
     */
    String shown(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(point -> {
            if (Character.isISOControl(point)) {
                shown.append(' ');
            } else if (point == BYTE_ORDER_MARK) {
                return;
            } else if (known.computeIfAbsent(point, this::has)) {
                shown.appendCodePoint(point);
            } else {
                shown.append(UNKNOWN);
            }
        });
        return shown.toString();
    }

    private boolean has(int point) {
        try {
            return font.encode(Character.toString(point)).length > 0;
        } catch (IOException | IllegalArgumentException missing) {
            return false;
        }
    }

    /** Width in points of a text that {@link #shown} has made. */
    float width(String shown, float size) throws IOException {
        return font.getStringWidth(shown) / 1000 * size;
    }

    /** The text in one line; what there is no room for is cut off, and a sign says so. */
    String line(String text, float size, float width) throws IOException {
        String shown = shown(text);
        // A size that was reckoned to fit does so but for rounding.
        if (width(shown, size) <= width + 0.01f) {
            return shown;
        }
        return shown.substring(0, fitting(shown, size, width - width(CUT, size))).stripTrailing() + CUT;
    }

    /** The text in lines that are no wider than {@code width} points; words longer than a line are broken. */
    List<String> lines(String text, float size, float width) throws IOException {
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\\R", -1)) {
            wrap(shown(paragraph), size, width, lines);
        }
        return lines;
    }

    private void wrap(String paragraph, float size, float width, List<String> lines) throws IOException {
        StringBuilder line = new StringBuilder();
        for (String word : paragraph.strip().split("\\s+")) {
            String rest = word;
            String longer = line.isEmpty() ? rest : line + " " + rest;
            if (width(longer, size) <= width) {
                line.setLength(0);
                line.append(longer);
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (width(rest, size) > width) {
                int fits = fitting(rest, size, width);
                lines.add(rest.substring(0, fits));
                rest = rest.substring(fits);
            }
            line.append(rest);
        }
        lines.add(line.toString());
    }

    private int fitting(String word, float size, float width) throws IOException {
        int fits = word.offsetByCodePoints(0, 1);
        while (fits < word.length()) {
            int next = word.offsetByCodePoints(fits, 1);
            if (width(word.substring(0, next), size) > width) {
                break;
            }
            fits = next;
        }
        return fits;
    }
}
