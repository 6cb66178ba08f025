package org.benchwright.ui.internal.bench;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.present.Command;
import org.benchwright.present.EntryKind;
import org.benchwright.present.StepCard.KeyHint;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.look.Fonts;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Rectangle;
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
    private final DeskListener listener = (change, test) -> changed(change, test);
    private Face face = new Face.Nobody();
    private Mode mode = Mode.ANSWER;
    private String laidOut = "";

    /** What the entry field is for. */
    private enum Mode {
        ANSWER, MAKE_SAFE, NOTE
    }

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        fonts = new Fonts(parent.getDisplay());
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(body);
        card = new CardCanvas(body, fonts, false);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(card);
        question = new CardCanvas(body, fonts, true);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(question);
        entry = new EntryBar(body, fonts, new Typed());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(entry);
        keys = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).indent(28, 0).applyTo(keys);
        body.addListener(SWT.Resize, event -> show(true));
        card.addListener(SWT.MouseDown, event -> entry.setFocus());
        parent.addDisposeListener(event -> {
            desk.remove(listener);
            fonts.dispose();
        });
        desk.add(listener);
        show(true);
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
        Display display = body.getDisplay();
        if (!display.isDisposed()) {
            display.asyncExec(() -> {
                if (!body.isDisposed()) {
                    sound(change, test);
                    show(false);
                }
            });
        }
    }

    /** The tone of any unit sounds, not only of the one that is looked at. */
    private void sound(DeskListener.Change change, String test) {
        boolean tone = change == DeskListener.Change.TEST
                && desk.held(test).map(held -> held.shown().last().tone()).orElse(false);
        if (tone) {
            body.getDisplay().beep();
        }
    }

    // ---- showing

    private void show(boolean again) {
        Face next = Face.of(desk);
        String layout = layoutKey(next);
        boolean other = !layout.equals(laidOut);
        boolean otherTest = !unit(layout).equals(unit(laidOut));
        face = next;
        if (otherTest) {
            mode = Mode.ANSWER;
        }
        card.show(face, other);
        question.show(face, other);
        if (other && mode == Mode.ANSWER || again) {
            List<String> typed = entry.typed();
            ask();
            // A note is not lost to a tone that sounds while it is typed, nor anything to a window that changes its size.
            boolean note = !typed.isEmpty() && typed.get(0).startsWith("+");
            entry.type(!other || note && !otherTest ? typed : List.of());
        }
        laidOut = layout;
        entry.setData(ASKS_FOR, layout);
        body.layout(true, true);
    }

    /** Changes whenever other parts are asked for; begins with the test's id. */
    private static String layoutKey(Face face) {
        if (face instanceof Face.Here here) {
            return here.shown().test() + " " + here.shown().version();
        }
        return face instanceof Face.NotHere not ? not.unit().test() + " not here" : "";
    }

    private static String unit(String layoutKey) {
        return layoutKey.split(" ", 2)[0];
    }

    private void ask() {
        boolean focused = entry.isFocusControl() || entry.fields().stream().anyMatch(field -> field.isFocusControl());
        entry.ask(kind(), prompts(), scale());
        question.ask(mode == Mode.MAKE_SAFE ? Message.CARD_MAKE_SAFE_ASK.text() : "");
        keys.setFont(fonts.of((int) (KEYS * scale()), false));
        keys.setText(keyWords());
        body.layout(true, true);
        if (focused || getSite().getPage().getActivePart() == this) {
            entry.setFocus();
        }
    }

    private double scale() {
        Rectangle window = body.getShell().getClientArea();
        return Flow.scale(window.width, window.height);
    }

    private EntryKind kind() {
        return mode == Mode.ANSWER && face instanceof Face.Here here && !here.shown().elsewhere() ? here.shown().kind() : EntryKind.WRITE;
    }

    private List<String> prompts() {
        if (mode == Mode.MAKE_SAFE) {
            return List.of(Message.CARD_MAKE_SAFE_HOW.text());
        } else if (mode == Mode.NOTE) {
            return List.of(Message.CARD_NOTE_ASK.text() + ": " + Message.CARD_NOTE_HOW.text());
        } else if (face instanceof Face.Here here) {
            return prompts(here.shown());
        }
        return face instanceof Face.NotHere ? List.of(Message.CARD_TAKE_UP_AS.text()) : List.of();
    }

    private static List<String> prompts(Shown shown) {
        if (shown.elsewhere()) {
            return List.of(Message.CARD_TAKE_UP_AS.text());
        }
        return switch (shown.kind()) {
            case NOTHING -> List.of();
            case MARK -> List.of(Message.CARD_MARK_KEY.text());
            case TIME -> List.of(shown.deadline().map(deadline -> deadline.what()).orElse(""));
            default -> shown.card().parts();
        };
    }

    private String keyWords() {
        if (!(face instanceof Face.Here here)) {
            return "";
        }
        // The keys are always in sight: no help is needed to see them.
        String hints = here.shown().card().keys().stream().filter(hint -> !hint.key().equals("?")).map(CardView::hint)
                .collect(Collectors.joining("    "));
        return switch (here.shown().kind()) {
            case NOTHING -> "";
            case MARK -> Message.CARD_KEYS_MARK.text(hints);
            case LINES -> Message.CARD_KEYS_LINES.text(hints);
            default -> Message.CARD_KEYS.text(hints);
        };
    }

    private static String hint(KeyHint hint) {
        return switch (hint.key()) {
            case "!" -> Message.CARD_KEY_MAKE_SAFE.text(hint.words());
            case "+" -> hint.key() + " " + hint.words();
            default -> hint.key() + ": " + hint.words();
        };
    }

    // ---- doing

    /** What was typed goes to the test, each with the version of the card that it answers. */
    private final class Typed implements EntryBar.Listener {

        @Override
        public void entered(List<String> parts) {
            if (face instanceof Face.NotHere not) {
                takeUp(not, parts.get(0));
            } else if (face instanceof Face.Here here) {
                entered(here, parts);
            }
        }

        private void entered(Face.Here here, List<String> parts) {
            Mode entered = mode;
            back();
            switch (entered) {
                case MAKE_SAFE -> here.test().makeSafe(parts.get(0));
                case NOTE -> here.test().note(parts.get(0));
                case ANSWER -> answer(here, parts);
            }
        }

        private void answer(Face.Here here, List<String> parts) {
            if (here.shown().elsewhere()) {
                here.test().takeUp();
            } else {
                here.test().answer(here.shown().version(), parts);
            }
        }

        @Override
        public void command(Command command) {
            if (command instanceof Command.MakeSafe makeSafe && !makeSafe.reason().isBlank()) {
                test().ifPresent(test -> test.makeSafe(makeSafe.reason()));
            } else if (command instanceof Command.MakeSafe) {
                makeSafe();
            } else if (command instanceof Command.Strike) {
                strike();
            } else if (command instanceof Command.Note note) {
                test().ifPresent(test -> test.note(note.text()));
            } else if (command instanceof Command.SoFar) {
                getSite().getPage().activate(getSite().getPage().findView(Ids.SO_FAR_VIEW));
            } else if (command instanceof Command.Leave) {
                desk.select("");
            }
        }

        @Override
        public void escaped() {
            back();
        }

        @Override
        public void paged(int pages) {
            card.scroll(pages);
        }
    }

    private Optional<OpenTest> test() {
        return face instanceof Face.Here here ? Optional.of(here.test()) : Optional.empty();
    }

    private void back() {
        if (mode != Mode.ANSWER) {
            mode = Mode.ANSWER;
            ask();
        }
    }

    private void takeUp(Face.NotHere not, String technician) {
        Settings settings = getSite().getService(Settings.class);
        String initials = technician.isBlank() ? settings.technician() : technician;
        desk.takeUp(not.unit(), initials, settings.station()).whenComplete((test, failure) -> {
            if (failure != null) {
                body.getDisplay().asyncExec(() -> Failures.tell(body.getShell(), failure));
            }
        });
    }

    /** The make-safe key: asks for the reason. */
    public void makeSafe() {
        begin(Mode.MAKE_SAFE);
    }

    /** Asks for a note. */
    public void note() {
        begin(Mode.NOTE);
    }

    private void begin(Mode next) {
        boolean open = face instanceof Face.Here here && here.shown().ending().isEmpty() && !here.shown().elsewhere();
        if (open) {
            mode = next;
            ask();
            entry.setFocus();
        }
    }

    /** Strikes the last entry. */
    public void strike() {
        if (face instanceof Face.Here here) {
            here.test().strike(here.shown().version());
        }
    }

    @Override
    public void setFocus() {
        if (!entry.setFocus()) {
            card.setFocus();
        }
    }
}
