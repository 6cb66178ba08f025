package org.benchwright.ui.internal.help;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.PaintObjectEvent;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageDataProvider;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;

/** A page of the manual to be read: as wide as there is room, its links followed by Tab and Enter or a click. */
final class PageSheet {

    private static final int MARGIN = 12;
    private static final int SLACK = 8;
    private static final int SET_AFTER_MILLIS = 120;

    private final StyledText text;
    private final Faces faces;
    private final Consumer<String> follow;
    private final Runnable setAnew = this::setAnew;
    private final Map<String, Image> images = new HashMap<>();
    private Optional<ManualPage> page = Optional.empty();
    private SetPage set = SetPage.EMPTY;
    private int widthSet;

    /** @param follow told where a link leads that was chosen */
    PageSheet(Composite parent, Consumer<String> follow) {
        this.follow = follow;
        text = new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        text.setMargins(MARGIN, MARGIN, MARGIN, MARGIN);
        text.setLineSpacing(3);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), text);
        text.setFont(resources.create(FontDescriptor.createFrom(text.getFont()).increaseHeight(1)));
        faces = new Faces(text);
        text.addPaintObjectListener(this::drawPicture);
        text.addListener(SWT.Paint, event -> drawRules(event.gc));
        text.addListener(SWT.Resize, event -> resized());
        text.addListener(SWT.Traverse, this::traverse);
        text.addListener(SWT.KeyDown, this::key);
        text.addListener(SWT.MouseUp, this::clicked);
        text.addListener(SWT.MouseMove, event -> text.setCursor(linkAt(new Point(event.x, event.y)).isPresent()
                ? text.getDisplay().getSystemCursor(SWT.CURSOR_HAND) : null));
        text.addListener(SWT.Dispose, event -> forgetImages());
    }

    StyledText control() {
        return text;
    }

    /** The headings of the page. */
    List<SetPage.HeadingAt> headings() {
        return set.headings();
    }

    /** Its words. */
    List<Passage> passages() {
        return set.passages();
    }

    /** Says something in place of a page. */
    void say(String words) {
        page = Optional.empty();
        set = SetPage.EMPTY;
        text.setText(words);
    }

    /** Shows a page, from its beginning or from the heading that is meant. */
    void show(ManualPage shown) {
        page = Optional.of(shown);
        forgetImages();
        set();
        go(shown.place().heading().flatMap(wanted -> set.headings().stream().filter(heading -> heading.anchor().equals(wanted)).findFirst())
                .map(SetPage.HeadingAt::start).orElse(0));
    }

    /** Scrolls to a place in the text, and puts the caret there. */
    void go(int offset) {
        text.setSelection(offset);
        if (offset == 0) {
            text.setTopPixel(0);
        } else {
            text.setTopIndex(text.getLineAtOffset(offset));
        }
    }

    /** Marks something that is looked for. */
    void mark(Passage.Found found) {
        text.setSelectionRange(found.start(), found.length());
        text.showSelection();
    }

    /** The look has changed. */
    void redress() {
        keepingPlace();
    }

    private void resized() {
        if (page.isPresent() && text.getClientArea().width != widthSet) {
            text.getDisplay().timerExec(SET_AFTER_MILLIS, setAnew);
        }
    }

    private void setAnew() {
        if (!text.isDisposed() && text.getClientArea().width != widthSet) {
            keepingPlace();
        }
    }

    /** Cells are broken elsewhere then, so the place is kept by the passage. */
    private void keepingPlace() {
        if (page.isPresent()) {
            int top = text.getTopPixel() == 0 ? 0 : text.getOffsetAtLine(text.getTopIndex());
            int passage = 0;
            while (passage + 1 < set.passages().size() && set.passages().get(passage + 1).start() <= top) {
                passage++;
            }
            set();
            go(top == 0 || passage >= set.passages().size() ? 0 : set.passages().get(passage).start());
        }
    }

    private void set() {
        widthSet = text.getClientArea().width;
        text.setRedraw(false);
        try {
            set = PageSetter.set(page.orElseThrow(), Math.max(1, widthSet - 2 * MARGIN - SLACK), faces, Theme.palette());
            text.setText(set.text());
            text.setStyleRanges(set.styles().toArray(new StyleRange[0]));
            set.lines().forEach(this::stand);
        } finally {
            text.setRedraw(true);
        }
    }

    private void stand(SetPage.Line line) {
        if (line.indent() > 0) {
            text.setLineIndent(line.number(), 1, line.indent());
        }
        if (line.indent() + line.hang() > 0) {
            text.setLineWrapIndent(line.number(), 1, line.indent() + line.hang());
        }
        if (line.above() > 0) {
            text.setLineVerticalIndent(line.number(), line.above());
        }
        if (line.tabs().length > 0) {
            text.setLineTabStops(line.number(), 1, line.tabs());
        }
        line.ground().ifPresent(ground -> text.setLineBackground(line.number(), 1, ground));
    }

    private void drawRules(GC gc) {
        gc.setForeground(Theme.palette().line());
        Rectangle area = text.getClientArea();
        for (SetPage.Line line : set.lines()) {
            if (line.ruled()) {
                int y = text.getLinePixel(line.number()) + line.above() / 2 - 1;
                if (y >= 0 && y < area.height) {
                    gc.drawLine(MARGIN, y, area.width - MARGIN, y);
                }
            }
        }
    }

    private void drawPicture(PaintObjectEvent event) {
        set.pictures().stream().filter(picture -> picture.at() == event.style.start).findFirst().ifPresent(picture -> {
            Image image = images.computeIfAbsent(picture.file(), this::image);
            Rectangle whole = image.getBounds();
            event.gc.setAntialias(SWT.ON);
            event.gc.setInterpolation(SWT.HIGH);
            int top = event.y + event.ascent - picture.height();
            event.gc.drawImage(image, 0, 0, whole.width, whole.height, event.x, top, picture.width(), picture.height());
            event.gc.setForeground(Theme.palette().line());
            event.gc.drawRectangle(event.x, top, picture.width() - 1, picture.height() - 1);
        });
    }

    /** One pixel of the file is one of the screen's at most, so that a screen with twice as many shows what is there. */
    private Image image(String file) {
        ImageData data = page.orElseThrow().pictures().get(file);
        int zoom = text.getMonitor().getZoom();
        ImageDataProvider pixels = asked -> asked == zoom ? data
                : data.scaledTo(Math.max(1, data.width * asked / zoom), Math.max(1, data.height * asked / zoom));
        return new Image(text.getDisplay(), pixels);
    }

    private void forgetImages() {
        images.values().forEach(Image::dispose);
        images.clear();
    }

    // ---- links

    /** Tab goes from link to link, and behind the last one on to what comes after the page. */
    private void traverse(Event event) {
        boolean next = event.detail == SWT.TRAVERSE_TAB_NEXT;
        if (next || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
            Optional<SetPage.LinkAt> link = next ? set.links().stream().filter(each -> each.start() >= behind()).findFirst()
                    : set.links().stream().filter(each -> each.start() < text.getSelection().x).reduce((one, other) -> other);
            event.doit = link.isEmpty();
            link.ifPresent(each -> {
                event.detail = SWT.TRAVERSE_NONE;
                text.setSelectionRange(each.start(), each.length());
                text.showSelection();
            });
        }
    }

    private int behind() {
        Point selected = text.getSelection();
        return selected.x == selected.y ? selected.x : selected.x + 1;
    }

    private void key(Event event) {
        if (event.character == SWT.CR) {
            int caret = text.getSelection().x;
            set.links().stream().filter(link -> link.start() <= caret && caret < link.start() + link.length()).findFirst()
                    .ifPresent(link -> follow.accept(link.to()));
        }
    }

    private void clicked(Event event) {
        if (event.button == 1 && text.getSelectionCount() == 0) {
            linkAt(new Point(event.x, event.y)).ifPresent(link -> follow.accept(link.to()));
        }
    }

    private Optional<SetPage.LinkAt> linkAt(Point point) {
        int offset = text.getOffsetAtPoint(point);
        return offset < 0 ? Optional.empty()
                : set.links().stream().filter(link -> link.start() <= offset && offset < link.start() + link.length()).findFirst();
    }
}
