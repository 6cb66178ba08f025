package org.benchwright.ui.internal.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.present.EntryKind;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.house.CameraFolder;
import org.benchwright.ui.internal.house.FilesDropped;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.part.ViewPart;

/** Step card: one step of the selected unit, large; entered by keyboard alone, make safe always one key away. */
public final class CardView extends ViewPart {

    /** A countdown's tenths and a lamp at 2.8 Hz are both drawn well enough at this period, in ms. */
    private static final int TICK = 80;
    private static final int KEYS = 20;
    /** Name of the entry's datum that says which test's which version the fields ask for. */
    public static final String ASKS_FOR = "org.benchwright.ui.asksFor";

    private Desk desk;
    private Fonts fonts;
    private Composite body;
    private CardCanvas card;
    private CardCanvas question;
    private EntryBar entry;
    private Label keys;
    private CardWork work;
    private final DeskListener listener = this::changed;
    private Face face = new Face.Nobody();
    private Purpose purpose = Purpose.ANSWER;
    private Asking asked = Asking.of(face, purpose);
    private Optional<Begun> begun = Optional.empty();

    /**
     * An answer that was begun when something else was asked first; it is put back by whoever goes back to the question.
     *
     * @param face  of what
     * @param typed what was typed
     */
    private record Begun(String face, List<String> typed) {
    }

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        work = new CardWork(desk, getSite().getService(Settings.class), new Worked());
        fonts = new Fonts(parent.getDisplay());
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(body);
        card = new CardCanvas(body, fonts, false);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(card);
        question = new CardCanvas(body, fonts, true);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(question);
        entry = new EntryBar(body, fonts, work);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(entry);
        keys = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(keys);
        body.addListener(SWT.Resize, event -> askAgain());
        card.addListener(SWT.MouseDown, event -> entry.setFocus());
        List.of(card, question, entry).forEach(part -> FilesDropped.on(part, files -> files.stream().findFirst().ifPresent(this::dropped)));
        CameraFolder camera = getSite().getService(CameraFolder.class);
        Consumer<Path> offered = picture -> onScreen(() -> entry.offer(picture));
        camera.add(offered);
        parent.addDisposeListener(event -> camera.remove(offered));
        parent.addDisposeListener(event -> {
            desk.remove(listener);
            fonts.dispose();
        });
        desk.add(listener);
        show();
        tick(parent.getDisplay());
    }

    private void tick(Display display) {
        display.timerExec(TICK, () -> {
            if (!card.isDisposed()) {
                if (card.moves() && card.isVisible()) {
                    card.redraw();
                }
                tick(display);
            }
        });
    }

    private void changed(DeskListener.Change change, String test) {
        onScreen(() -> {
            sound(change, test);
            show();
        });
    }

    private void dropped(Path file) {
        if (asked.kind() == EntryKind.FILE) {
            entry.offer(file);
        } else if (asked.kind() != EntryKind.NOTHING) {
            Labels.say(keys, Words.NO_FILE_ASKED.text(String.valueOf(file.getFileName())));
        }
    }

    private void onScreen(Runnable shown) {
        OnDisplay.later(body, shown);
    }

    /** The tone of any unit sounds, not only of the one that is looked at. */
    private void sound(DeskListener.Change change, String test) {
        boolean tone = change == DeskListener.Change.TEST
                && desk.held(test).map(held -> held.shown().last().tone()).orElse(false);
        if (tone) {
            body.getDisplay().beep();
        }
    }

    private void show() {
        Face before = face;
        face = Face.of(desk);
        boolean otherUnit = !face.test().equals(before.test());
        if (otherUnit) {
            purpose = Purpose.ANSWER;
        }
        boolean other = !face.key().equals(before.key());
        Asking next = asking();
        if (face.equals(before) && next.equals(asked)) {
            // Something went on at another unit.
            return;
        }
        card.show(face, other);
        question.show(face, other);
        entry.setData(ASKS_FOR, face.key());
        if (!next.equals(asked) || other && purpose == Purpose.ANSWER) {
            List<String> typed = entry.typed();
            ask(next);
            // A note is not lost to a tone that sounds while it is typed, nor half a log to a note.
            boolean note = !typed.isEmpty() && typed.get(0).startsWith("+") && !otherUnit;
            entry.type(note || sameLog(before) ? typed : List.of());
        } else {
            body.layout(true, true);
        }
    }

    private boolean sameLog(Face before) {
        return before instanceof Face.Here was && face instanceof Face.Here is && was.test().equals(is.test()) && is.shown().kind() == EntryKind.LINES
                && was.shown().key().equals(is.shown().key()) && asked.kind() == EntryKind.LINES;
    }

    private Asking asking() {
        boolean locked = desk.station().locked() && purpose != Purpose.MAKE_SAFE && !(face instanceof Face.Nobody);
        return locked ? Asking.locked(desk.station().person().orElse("")) : Asking.of(face, purpose);
    }

    /** Everything in the size of the window, and what was typed kept. */
    private void askAgain() {
        List<String> typed = entry.typed();
        ask(asked);
        entry.type(typed);
        card.show(face, false);
        question.show(face, false);
    }

    private void ask(Asking next) {
        asked = next;
        boolean focused = entry.isFocusControl() || entry.fields().stream().anyMatch(field -> field.isFocusControl());
        Rectangle window = body.getShell().getClientArea();
        double scale = Flow.scale(window.width, window.height);
        entry.ask(next, scale);
        question.ask(next.first());
        Font font = fonts.of((int) (KEYS * scale), false);
        if (!font.equals(keys.getFont())) {
            keys.setFont(font);
        }
        ((GridData) keys.getLayoutData()).horizontalIndent = (int) (EntryBar.MARGIN * scale);
        Labels.say(keys, next.keys());
        body.layout(true, true);
        if (focused || getSite().getPage().getActivePart() == this) {
            entry.setFocus();
        }
    }

    private void begin(Purpose next) {
        boolean can = next == Purpose.ANSWER || face.takes(next);
        if (can && purpose != next) {
            if (purpose == Purpose.ANSWER && asked.kind() != EntryKind.SECRET) {
                begun = Optional.of(new Begun(face.key(), entry.typed()));
            }
            purpose = next;
            ask(asking());
            begun.filter(kept -> next == Purpose.ANSWER && kept.face().equals(face.key())).ifPresent(kept -> entry.type(kept.typed()));
        }
        if (can && next != Purpose.ANSWER) {
            entry.setFocus();
        }
    }

    /** The make-safe key: asks for the reason; where the test is not open here, first who takes it up. */
    public void makeSafe() {
        begin(Purpose.MAKE_SAFE);
    }

    /** Asks for a note. */
    public void note() {
        begin(Purpose.NOTE);
    }

    /** Strikes the last entry. */
    public void strike() {
        work.strike();
    }

    /** This card, as what is typed acts on it. */
    private final class Worked implements CardWork.Card {

        @Override
        public Face face() {
            return face;
        }

        @Override
        public Purpose purpose() {
            return purpose;
        }

        @Override
        public void begin(Purpose next) {
            CardView.this.begin(next);
        }

        @Override
        public void scroll(int pages) {
            card.scroll(pages);
        }

        @Override
        public void showSoFar() {
            getSite().getPage().activate(getSite().getPage().findView(Ids.SO_FAR_VIEW));
        }

        @Override
        public void failed(Throwable failure) {
            onScreen(() -> Failures.tell(body.getShell(), failure));
        }
    }

    @Override
    public void setFocus() {
        if (!entry.setFocus()) {
            card.setFocus();
        }
    }
}
