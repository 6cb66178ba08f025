package org.benchwright.ui.internal.bench;

import java.util.List;

import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;

/**
 * A notice over the window's upper right corner, which goes by itself. It never has the focus: whoever types goes on typing, and the entry
 * and the make-safe key stay in sight.
 */
public final class Notice {

    /** Name of the notice's shell, for those who look for it. */
    public static final String DATUM = "org.benchwright.ui.notice";

    private static final int STAYS = 20_000;
    private static final int MOST = 4;
    private static final int WIDTH = 460;
    private static final int BELOW = 64;
    private static final int MARGIN = 14;
    private static final int LARGER = 3;

    private final Shell window;
    private Shell shown;
    private int turn;

    Notice(Shell window) {
        this.window = window;
    }

    /**
     * Shows something in the place of what is shown.
     *
     * @param lines  one for each unit that it is about; of very many only the first are told
     * @param hint   what to do; may be empty
     * @param urgent whether it has the urgent colour
     */
    void show(List<String> lines, String hint, boolean urgent) {
        close();
        Shell notice = new Shell(window, SWT.NO_TRIM | SWT.ON_TOP | SWT.NO_FOCUS | SWT.TOOL);
        notice.setData(DATUM, Boolean.TRUE);
        GridLayoutFactory.fillDefaults().margins(MARGIN, MARGIN).spacing(0, 6).applyTo(notice);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(notice.getDisplay()), notice);
        FontDescriptor font = FontDescriptor.createFrom(JFaceResources.getDialogFont()).increaseHeight(LARGER);
        lines.stream().limit(MOST).forEach(line -> label(notice, resources, font.setStyle(SWT.BOLD), line));
        String more = lines.size() > MOST ? Words.NOTICE_MORE.text(lines.size() - MOST) + "   " : "";
        label(notice, resources, font, more + hint);
        notice.addListener(SWT.MouseDown, event -> close());
        Point size = notice.computeSize(WIDTH, SWT.DEFAULT);
        Rectangle over = window.getBounds();
        notice.setBounds(over.x + Math.max(0, over.width - size.x - MARGIN), over.y + BELOW, Math.min(size.x, over.width), size.y);
        notice.setVisible(true);
        colour(notice, urgent);
        // Whoever changes the look has it drawn anew, behind the style sheet.
        notice.addListener(SWT.Paint, event -> colour(notice, urgent));
        shown = notice;
        int mine = ++turn;
        window.getDisplay().timerExec(STAYS, () -> {
            if (mine == turn) {
                close();
            }
        });
    }

    private void label(Shell notice, LocalResourceManager resources, FontDescriptor font, String words) {
        Label label = new Label(notice, SWT.WRAP);
        label.setFont(resources.create(font));
        Labels.say(label, words);
        label.addListener(SWT.MouseDown, event -> close());
        GridDataFactory.fillDefaults().grab(true, false).hint(WIDTH - 2 * MARGIN, SWT.DEFAULT).applyTo(label);
    }

    /** Set once it is shown: the style sheet, which knows nothing of notices, has been applied by then. */
    private static void colour(Shell notice, boolean urgent) {
        var ground = urgent ? Theme.palette().urgent() : Theme.palette().text();
        if (ground.equals(notice.getBackground())) {
            return;
        }
        notice.setBackground(ground);
        for (Control label : notice.getChildren()) {
            label.setBackground(ground);
            label.setForeground(Theme.palette().ground());
        }
    }

    /** Takes it away. */
    void close() {
        if (shown != null && !shown.isDisposed()) {
            shown.dispose();
        }
        shown = null;
    }
}
