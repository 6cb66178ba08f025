package org.benchwright.ui.internal.bench;

import org.benchwright.present.StepCard;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;

/** A drawn part of the step card: the card, which scrolls, or the question below it, which is as high as it needs to be. */
final class CardCanvas extends Canvas {

    private static final int MARGIN = 28;

    private final Fonts fonts;
    private final boolean question;
    private Face face = new Face.Nobody();
    private String first = "";

    CardCanvas(Composite parent, Fonts fonts, boolean question) {
        super(parent, SWT.DOUBLE_BUFFERED | (question ? SWT.NONE : SWT.V_SCROLL));
        this.fonts = fonts;
        this.question = question;
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.Resize, event -> fitScrolling());
        if (!question) {
            getVerticalBar().addListener(SWT.Selection, event -> redraw());
        }
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = spoken();
            }
        });
    }

    /** Shows another face, from its top. */
    void show(Face next, boolean fromTop) {
        face = next;
        if (!question && fromTop) {
            getVerticalBar().setSelection(0);
        }
        fitScrolling();
        redraw();
    }

    /** Asks something else first, in a band; an empty text goes back to the question. */
    void ask(String other) {
        first = other;
        redraw();
    }

    /** Scrolls by pages, up for -1 and down for 1. */
    void scroll(int pages) {
        getVerticalBar().setSelection(getVerticalBar().getSelection() + pages * getClientArea().height * 3 / 4);
        redraw();
    }

    /** True if something moves by itself: a countdown or a flashing lamp. */
    boolean moves() {
        return face instanceof Face.Here here && !here.takenUpFirst() && (here.shown().deadline().isPresent() || !here.shown().drawings().isEmpty());
    }

    private String spoken() {
        if (!(face instanceof Face.Here here)) {
            return Message.CARD_NONE.text();
        }
        StepCard card = here.shown().card();
        if (here.stopped()) {
            return (question ? Message.CARD_STOPPED_TAKE_UP : Message.CARD_STOPPED).text(here.shown().serial());
        }
        return question ? card.question()
                : here.alarm().map(words -> words + ". ").orElse("") + Message.CARD_SPOKEN.text(card.place(), card.instruction());
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        int width = widthHint == SWT.DEFAULT ? getParent().getClientArea().width : widthHint;
        return new Point(width, question ? measured(width) : 100);
    }

    private int measured(int width) {
        // Measuring must leave no trace on the screen.
        Image elsewhere = new Image(getDisplay(), 1, 1);
        GC gc = new GC(elsewhere);
        try {
            return flow(gc, false, width, 0);
        } finally {
            gc.dispose();
            elsewhere.dispose();
        }
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        Palette palette = Theme.palette();
        gc.setBackground(palette.ground());
        gc.fillRectangle(area);
        gc.setTextAntialias(SWT.ON);
        flow(gc, true, area.width, question ? 0 : -getVerticalBar().getSelection());
    }

    private int flow(GC gc, boolean drawing, int width, int top) {
        Rectangle window = getShell().getClientArea();
        double scale = Flow.scale(window.width, window.height);
        int margin = (int) (MARGIN * scale);
        Flow flow = new Flow(gc, fonts, scale, drawing, margin, width - margin, top + margin / 3);
        CardPainter painter = new CardPainter(fonts, Theme.palette());
        if (question) {
            painter.question(flow, face, first);
        } else {
            painter.card(flow, face);
        }
        return flow.y() + margin / 3;
    }

    private void fitScrolling() {
        if (question || getClientArea().width <= 0) {
            return;
        }
        int whole = measured(getClientArea().width);
        int seen = getClientArea().height;
        getVerticalBar().setVisible(whole > seen);
        getVerticalBar().setValues(Math.min(getVerticalBar().getSelection(), Math.max(0, whole - seen)), 0, Math.max(whole, 1),
                Math.max(1, Math.min(seen, whole)), 40, Math.max(1, seen / 2));
    }
}
