package org.benchwright.ui.internal.look;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Composite;

/** Text to be read: headings, paragraphs and the lines of a timeline, struck entries struck through but readable. */
public final class Story {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

    private static final int POINT_INDENT = 14;

    private final StyledText text;
    private final Font heading;
    private LocalDate day = LocalDate.MIN;
    /** How what was told last is to look. Given to the control all at once: for each time it asks the screen where the pointer is. */
    private final List<StyleRange> untold = new ArrayList<>();

    /** @param larger by how many points its font is larger than the usual one */
    public Story(Composite parent, int larger) {
        text = new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        text.setMargins(10, 8, 10, 8);
        text.setLineSpacing(3);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), text);
        text.setFont(resources.create(FontDescriptor.createFrom(text.getFont()).increaseHeight(larger)));
        heading = resources.create(FontDescriptor.createFrom(text.getFont()).increaseHeight(6).setStyle(SWT.BOLD));
    }

    /** The control. */
    public StyledText control() {
        return text;
    }

    /** Throws everything away. */
    public void clear() {
        untold.clear();
        text.setText("");
        day = LocalDate.MIN;
    }

    /** Adds a heading. */
    public void heading(String words) {
        append(words, SWT.NORMAL).font = heading;
    }

    /** Adds a paragraph. */
    public void paragraph(String words) {
        append(words, SWT.NORMAL);
    }

    /** Adds a paragraph that stands out. */
    public void strong(String words) {
        append(words, SWT.BOLD);
    }

    /** Adds a paragraph that is struck through, and readable. */
    public void struck(String words) {
        append(words, SWT.NORMAL).strikeout = true;
    }

    /** Adds one of several points, set in so that each stands apart. */
    public void point(String words) {
        append("\u2022  " + words, SWT.NORMAL);
        text.setLineIndent(text.getLineCount() - 2, 1, POINT_INDENT);
        text.setLineWrapIndent(text.getLineCount() - 2, 1, 2 * POINT_INDENT);
    }

    /** Adds a line of a timeline; a new day is announced. */
    public void line(TimelineLine line) {
        ZonedDateTime at = line.instant().atZone(ZoneId.systemDefault());
        if (!at.toLocalDate().equals(day)) {
            day = at.toLocalDate();
            strong(DAY.format(at));
        }
        String struck = line.struck() ? "  (" + Message.SO_FAR_STRUCK.text() + ")" : "";
        append(CLOCK.format(at) + lead(line) + line.words() + struck, line.begins() ? SWT.BOLD : SWT.NORMAL).strikeout = line.struck();
        text.setLineWrapIndent(text.getLineCount() - 2, 1, 90);
    }

    /** Who told it; what follows from it is set in behind an arrow, where a step begins it stands out. */
    private static String lead(TimelineLine line) {
        if (line.begins()) {
            return "  ";
        }
        return line.who().isEmpty() ? "      \u2192 " : "  " + line.who() + ": ";
    }

    private StyleRange append(String words, int fontStyle) {
        int start = text.getCharCount();
        text.append(words + "\n");
        StyleRange style = new StyleRange(start, words.length(), null, null, fontStyle);
        if (untold.isEmpty()) {
            OnDisplay.later(text, this::tell);
        }
        untold.add(style);
        return style;
    }

    private void tell() {
        if (!untold.isEmpty()) {
            int start = untold.get(0).start;
            text.replaceStyleRanges(start, text.getCharCount() - start,
                    untold.stream().filter(style -> style.length > 0 && !style.isUnstyled()).toArray(StyleRange[]::new));
            untold.clear();
        }
    }

    /** Scrolls to the end. */
    public void showEnd() {
        tell();
        text.setTopIndex(Math.max(0, text.getLineCount() - 1));
    }

    /** Scrolls to the beginning. */
    public void showBeginning() {
        tell();
        text.setTopPixel(0);
    }
}
