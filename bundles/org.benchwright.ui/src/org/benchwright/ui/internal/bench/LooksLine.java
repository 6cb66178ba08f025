package org.benchwright.ui.internal.bench;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.present.LookReminder;
import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.menus.WorkbenchWindowControlContribution;

/** How many looks are missed, due and coming, beside the buttons that every view has above it. A click begins the round. */
public final class LooksLine extends WorkbenchWindowControlContribution {

    /** Name of the line's datum: what it says, empty if nothing. */
    public static final String DATUM = "org.benchwright.ui.looks";
    /** The style sheets' name for it and for what it lies on: it has the colour of the bar that it is in. */
    private static final String STYLE = "Strip";
    private static final String STYLE_KEY = "org.eclipse.e4.ui.css.CssClassName";

    @Override
    protected Control createControl(Composite parent) {
        return new Line(parent, PlatformUI.getWorkbench().getService(Reminders.class));
    }

    /** Draws itself: what is urgent has its colour in the light and in the dark look. */
    static final class Line extends Canvas {

        private static final int INDENT = 12;
        private static final int AROUND = 5;
        /** So many looks of each kind are told in full; the bar that it stands in doesn't grow later. */
        private static final int MOST = 88;

        private String words = "";
        private boolean urgent;

        Line(Composite parent, Reminders reminders) {
            super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_FOCUS);
            setData(STYLE_KEY, STYLE);
            parent.setData(STYLE_KEY, STYLE);
            LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), this);
            setFont(resources.create(FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(1).setStyle(SWT.BOLD)));
            Consumer<List<LookReminder>> listener = this::show;
            reminders.add(listener);
            addDisposeListener(event -> reminders.remove(listener));
            addListener(SWT.Paint, event -> draw(event.gc));
            addListener(SWT.MouseDown, event -> round());
            getAccessible().addAccessibleListener(new AccessibleAdapter() {
                @Override
                public void getName(AccessibleEvent event) {
                    event.result = words;
                }
            });
            show(reminders.looks());
        }

        private void show(List<LookReminder> looks) {
            words = words(looks);
            setData(DATUM, words);
            urgent = looks.stream().anyMatch(look -> look.kind() != LookReminder.Kind.COMING);
            redraw();
        }

        private static String words(List<LookReminder> looks) {
            return LookReminder.summary(looks).map(summary -> summary + "   " + Words.LOOKS_GO.text()).orElse("");
        }

        private void draw(GC gc) {
            if (words.isEmpty()) {
                return;
            }
            Palette palette = Theme.palette();
            Rectangle area = getClientArea();
            Point size = gc.textExtent(words);
            if (urgent) {
                gc.setAntialias(SWT.ON);
                gc.setBackground(palette.urgent());
                gc.fillRoundRectangle(0, 1, Math.min(area.width, size.x + 2 * INDENT), area.height - 2, 8, 8);
            }
            gc.setForeground(urgent ? palette.ground() : palette.text());
            gc.drawText(words, INDENT, (area.height - size.y) / 2, true);
        }

        private void round() {
            try {
                if (!words.isEmpty()) {
                    PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand("org.benchwright.ui.rounds", null);
                }
            } catch (CommandException e) {
                ILog.of(LooksLine.class).error(String.valueOf(e.getMessage()), e);
            }
        }

        @Override
        public Point computeSize(int wide, int high, boolean changed) {
            GC gc = new GC(this);
            try {
                gc.setFont(getFont());
                Point size = gc.textExtent(words(Stream.of(LookReminder.Kind.values()).flatMap(Line::most).toList()));
                return new Point(size.x + 2 * INDENT, size.y + 2 * AROUND);
            } finally {
                gc.dispose();
            }
        }

        private static Stream<LookReminder> most(LookReminder.Kind kind) {
            return Collections.nCopies(MOST, new LookReminder("", "", Optional.empty(), kind, Instant.EPOCH, Instant.EPOCH)).stream();
        }

        @Override
        public boolean setFocus() {
            return false;
        }
    }
}
