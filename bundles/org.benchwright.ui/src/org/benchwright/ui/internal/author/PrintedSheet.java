package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.PrintedText.Part;
import org.benchwright.ui.internal.author.PrintedParagraphs.Look;
import org.benchwright.ui.internal.author.PrintedParagraphs.Paragraph;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.LineBackgroundEvent;
import org.eclipse.swt.custom.LineStyleEvent;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;

/** A printed text on the screen, in large type: to be scrolled, selected, and pointed at. */
final class PrintedSheet {

    private static final int LARGER = 3;
    private static final int INSET = 28;
    /** What a step says first should be in sight with its heading. */
    private static final int LINES_BELOW = 6;

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
        text.addLineStyleListener(this::style);
        text.addLineBackgroundListener(this::ground);
    }

    StyledText control() {
        return text;
    }

    /** Shows parts. Only lines that are different are touched, so that a change of a word costs no more in a long text, and the sheet stays. */
    void show(List<Part> now) {
        List<Paragraph> before = paragraphs;
        parts = List.copyOf(now);
        paragraphs = PrintedParagraphs.of(parts);
        int most = Math.min(before.size(), paragraphs.size());
        int same = 0;
        while (same < most && before.get(same).looksLike(paragraphs.get(same))) {
            same++;
        }
        int sameBelow = 0;
        while (sameBelow < most - same && before.get(before.size() - 1 - sameBelow).looksLike(paragraphs.get(paragraphs.size() - 1 - sameBelow))) {
            sameBelow++;
        }
        String gone = text(before.subList(same, before.size() - sameBelow));
        String come = text(paragraphs.subList(same, paragraphs.size() - sameBelow));
        if (!gone.equals(come)) {
            text.replaceTextRange(text(before.subList(0, same)).length(), gone.length(), come);
        }
    }

    /** Draws the same again, in the look that is on. Lines get their look when they come into sight: there may be thousands. */
    void draw() {
        text.setText(text(paragraphs));
        text.setTopIndex(marked.flatMap(this::line).orElse(0));
    }

    private static String text(List<Paragraph> paragraphs) {
        return paragraphs.stream().map(paragraph -> paragraph.words() + "\n").collect(Collectors.joining());
    }

    private Optional<Paragraph> paragraph(int offset) {
        int line = text.getLineAtOffset(offset);
        return line < paragraphs.size() ? Optional.of(paragraphs.get(line)) : Optional.empty();
    }

    private void style(LineStyleEvent event) {
        paragraph(event.lineOffset).ifPresent(paragraph -> {
            event.styles = new StyleRange[] {style(event.lineOffset, paragraph)};
            event.indent = paragraph.look() == Look.NOTE || paragraph.look() == Look.HAZARD ? INSET : 0;
            event.wrapIndent = event.indent > 0 || paragraph.look() == Look.ASKED ? INSET : 0;
        });
    }

    private StyleRange style(int offset, Paragraph paragraph) {
        StyleRange style = new StyleRange(offset, paragraph.words().length(), null, null);
        switch (paragraph.look()) {
            case TITLE -> style.font = title;
            case SECTION -> style.font = section;
            case STEP -> style.font = step;
            case INSTRUCTION -> style.font = strong;
            case BELOW, NOTE -> style.foreground = Theme.palette().quiet();
            case SIGNAL -> {
                style.font = strong;
                style.foreground = paragraph.signal().map(Palette::text).orElse(null);
            }
            case HAZARD, SENTENCE, ASKED, TOLD, SPACE -> style.fontStyle = SWT.NORMAL;
        }
        return style;
    }

    /** Signal words stand on their colour, and the heading that was gone to on a bar. */
    private void ground(LineBackgroundEvent event) {
        paragraph(event.lineOffset).ifPresent(paragraph -> {
            if (paragraph.look() == Look.SIGNAL) {
                event.lineBackground = paragraph.signal().map(Palette::ground).orElse(null);
            } else if (paragraph.look() == Look.HAZARD) {
                event.lineBackground = Theme.palette().panel();
            } else if (isMarked(paragraph)) {
                event.lineBackground = Theme.palette().line();
            }
        });
    }

    private boolean isMarked(Paragraph paragraph) {
        boolean heading = paragraph.look() == Look.STEP || paragraph.look() == Look.SECTION;
        return heading && marked.filter(parts.get(paragraph.part()).about()::equals).isPresent();
    }

    /** Brings the heading of what a key names into sight and marks it; does not scroll where it is in sight already. */
    void reveal(String key) {
        if (marked.filter(key::equals).isPresent()) {
            return;
        }
        marked = Optional.of(key);
        line(key).ifPresent(line -> {
            // By lines, not by pixels: those above need not be laid out for it.
            if (line < text.getTopIndex() || line > text.getLineIndex(text.getClientArea().height) - LINES_BELOW) {
                text.setTopIndex(Math.max(0, line - 1));
            }
        });
        text.redraw();
    }

    private Optional<Integer> line(String key) {
        for (int line = 0; line < paragraphs.size(); line++) {
            if (paragraphs.get(line).look() != Look.SPACE && parts.get(paragraphs.get(line).part()).about().equals(key)) {
                return Optional.of(line);
            }
        }
        return Optional.empty();
    }

    /** What is shown at a point, by its key: its own, or that of the nearest part above it which has one. */
    Optional<String> at(Point point) {
        return paragraphs.isEmpty() ? Optional.empty() : about(Math.min(text.getLineIndex(point.y), paragraphs.size() - 1));
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
