package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.SignalWord;
import org.benchwright.ui.internal.author.PrintedParagraphs.Look;
import org.benchwright.ui.internal.author.PrintedParagraphs.Paragraph;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;

/** A printed text on the screen, in large type: to be scrolled, selected, and pointed at. */
final class PrintedSheet {

    private static final int LARGER = 3;
    private static final int INSET = 28;

    private final StyledText text;
    private final Font title;
    private final Font section;
    private final Font step;
    private final Font strong;
    private List<Part> parts = List.of();
    private List<Paragraph> paragraphs = List.of();
    private Optional<String> marked = Optional.empty();

    PrintedSheet(Composite parent) {
        text = new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        text.setMargins(16, 12, 16, 12);
        text.setLineSpacing(4);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), text);
        FontDescriptor usual = FontDescriptor.createFrom(JFaceResources.getDefaultFont()).increaseHeight(LARGER);
        text.setFont(resources.create(usual));
        title = resources.create(usual.increaseHeight(8).setStyle(SWT.BOLD));
        section = resources.create(usual.increaseHeight(5).setStyle(SWT.BOLD));
        step = resources.create(usual.increaseHeight(2).setStyle(SWT.BOLD));
        strong = resources.create(usual.increaseHeight(1).setStyle(SWT.BOLD));
    }

    StyledText control() {
        return text;
    }

    /** Shows parts, scrolled to where the sheet was. */
    void show(List<Part> now) {
        if (!now.equals(parts)) {
            parts = List.copyOf(now);
            paragraphs = PrintedParagraphs.of(parts);
            draw();
        }
    }

    /** Draws the same again, in the look that is on. */
    void draw() {
        int top = text.getTopPixel();
        text.setRedraw(false);
        try {
            text.setText(paragraphs.stream().map(Paragraph::words).collect(Collectors.joining("\n")));
            Palette palette = Theme.palette();
            for (int line = 0; line < paragraphs.size(); line++) {
                draw(line, paragraphs.get(line), palette);
            }
            mark();
            text.setTopPixel(top);
        } finally {
            text.setRedraw(true);
        }
    }

    private void draw(int line, Paragraph paragraph, Palette palette) {
        StyleRange style = new StyleRange(text.getOffsetAtLine(line), paragraph.words().length(), null, null);
        switch (paragraph.look()) {
            case TITLE -> style.font = title;
            case SECTION -> style.font = section;
            case STEP -> style.font = step;
            case INSTRUCTION -> style.font = strong;
            case BELOW, NOTE -> style.foreground = palette.quiet();
            case SIGNAL -> {
                SignalWord signal = paragraph.signal().orElseThrow();
                style.font = strong;
                style.foreground = Palette.text(signal);
                text.setLineBackground(line, 1, Palette.ground(signal));
            }
            case HAZARD -> text.setLineBackground(line, 1, palette.panel());
            case SENTENCE, ASKED, TOLD -> style.fontStyle = SWT.NORMAL;
        }
        if (style.length > 0) {
            text.setStyleRange(style);
        }
        space(line, paragraph.look());
    }

    private void space(int line, Look look) {
        switch (look) {
            case SECTION -> text.setLineVerticalIndent(line, 26);
            case STEP -> text.setLineVerticalIndent(line, 18);
            case INSTRUCTION, SIGNAL, ASKED -> text.setLineVerticalIndent(line, 6);
            case NOTE, HAZARD -> text.setLineIndent(line, 1, INSET);
            default -> text.setLineIndent(line, 1, 0);
        }
        if (look == Look.NOTE || look == Look.HAZARD || look == Look.ASKED) {
            text.setLineWrapIndent(line, 1, INSET);
        }
    }

    /** Brings the heading of what a key names into sight and marks it; does not scroll where it is in sight already. */
    void reveal(String key) {
        if (marked.filter(key::equals).isPresent()) {
            return;
        }
        unmark();
        marked = Optional.of(key);
        line(key).ifPresent(line -> {
            int top = text.getLinePixel(line);
            if (top < 0 || top > text.getClientArea().height * 3 / 4) {
                text.setTopPixel(Math.max(0, text.getTopPixel() + top - text.getClientArea().height / 8));
            }
        });
        mark();
    }

    private void mark() {
        marked.flatMap(this::line).filter(this::isHeading).ifPresent(line -> text.setLineBackground(line, 1, Theme.palette().line()));
    }

    private void unmark() {
        marked.flatMap(this::line).filter(this::isHeading).ifPresent(line -> text.setLineBackground(line, 1, null));
    }

    private boolean isHeading(int line) {
        return paragraphs.get(line).look() == Look.STEP || paragraphs.get(line).look() == Look.SECTION;
    }

    private Optional<Integer> line(String key) {
        for (int line = 0; line < paragraphs.size(); line++) {
            if (parts.get(paragraphs.get(line).part()).about().equals(key)) {
                return Optional.of(line);
            }
        }
        return Optional.empty();
    }

    /** What is shown at a point, by its key: its own, or that of the nearest part above it which has one. */
    Optional<String> at(Point point) {
        int offset = text.getOffsetAtPoint(point);
        if (offset < 0 || paragraphs.isEmpty()) {
            return Optional.empty();
        }
        return about(Math.min(text.getLineAtOffset(offset), paragraphs.size() - 1));
    }

    private Optional<String> about(int line) {
        for (int part = paragraphs.get(line).part(); part >= 0; part--) {
            if (!parts.get(part).about().isEmpty()) {
                return Optional.of(parts.get(part).about());
            }
        }
        return Optional.empty();
    }
}
