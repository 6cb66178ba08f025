package org.benchwright.ui.internal.look;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
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
        text.setText("");
        day = LocalDate.MIN;
    }

    /** Adds a heading. */
    public void heading(String words) {
        StyleRange style = append(words, SWT.NORMAL);
        style.font = heading;
        text.setStyleRange(style);
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
        StyleRange style = append(words, SWT.NORMAL);
        style.strikeout = true;
        text.setStyleRange(style);
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
        StyleRange style = append(CLOCK.format(at) + lead(line) + line.words() + struck, line.begins() ? SWT.BOLD : SWT.NORMAL);
        style.strikeout = line.struck();
        text.setStyleRange(style);
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
        text.setStyleRange(style);
        return style;
    }

    /** Scrolls to the end. */
    public void showEnd() {
        text.setTopIndex(Math.max(0, text.getLineCount() - 1));
    }

    /** Scrolls to the beginning. */
    public void showBeginning() {
        text.setTopPixel(0);
    }
}
