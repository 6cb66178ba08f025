package org.benchwright.ui.tests;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;

/** Somebody who signs revisions in the window. */
final class Signer {

    private Signer() {
    }

    /** Brings Revisions to the front, and the other view back when the editor is used next. */
    static void look() throws Exception {
        Screen.page().showView(Ids.REVISIONS_VIEW);
        Screen.settle();
    }

    static Table list() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 5 && table.getColumn(2).getText().equals("Standing"));
    }

    /** The rows of the list: revision, standing, family, by whom. */
    static List<String> rows() {
        return Stream.of(list().getItems())
                .map(item -> IntStream.range(1, 5).mapToObj(item::getText).collect(Collectors.joining(" | "))).toList();
    }

    /** Waits for a row that begins so. */
    static void waitForRow(String beginning) {
        Screen.waitFor(beginning + " in " + rows(), () -> rows().stream().anyMatch(row -> row.startsWith(beginning)));
    }

    /** Selects the row that begins so. */
    static void select(String beginning) {
        int row = IntStream.range(0, rows().size()).filter(i -> rows().get(i).startsWith(beginning)).findFirst()
                .orElseThrow(() -> new AssertionError(beginning + " is not in " + rows()));
        Screen.select(list(), row);
        Screen.settle();
    }

    /** What is told of the selected revision. */
    static String told() {
        return Screen.all(StyledText.class).map(StyledText::getText).filter(text -> text.contains("Digest of its text")).findFirst().orElse("");
    }

    /** Presses a button of Revisions, and does something in the dialog that it opens. */
    static void in(String button, String title, Consumer<Shell> work) throws Exception {
        Dialogs.answered(title, () -> Screen.press(button), work);
    }

    /** Chooses a person, types a password and presses the button; waits until that is taken, or refused. */
    static String sign(Shell dialog, String person, String password) {
        Combo who = Screen.all(dialog, Combo.class).get(0);
        who.select(IntStream.range(0, who.getItemCount()).filter(i -> who.getItem(i).startsWith(person + ":")).findFirst().orElseThrow());
        password(dialog).setText(password);
        Dialogs.enter(dialog);
        Screen.waitFor("the signature", () -> dialog.isDisposed() || password(dialog).isEnabled());
        return dialog.isDisposed() ? "" : Dialogs.message(dialog);
    }

    static Text password(Shell dialog) {
        return Screen.all(dialog, Text.class).stream().filter(text -> (text.getStyle() & SWT.PASSWORD) != 0).findFirst().orElseThrow();
    }

    /** Signs in the dialog that a button of Revisions opens; fails if that is refused. */
    static void signs(String button, String title, String person, String password) throws Exception {
        in(button, title, dialog -> {
            String refused = sign(dialog, person, password);
            if (!refused.isEmpty()) {
                throw new AssertionError(refused);
            }
        });
    }

    /** All that can be pressed by Alt and a letter in a dialog: its letters. */
    static List<String> letters(Shell dialog) {
        Stream<String> labels = Screen.all(dialog, org.eclipse.swt.widgets.Label.class).stream().map(label -> label.getText());
        Stream<String> buttons = Screen.all(dialog, Button.class).stream().map(Button::getText);
        return Stream.concat(labels, buttons).filter(text -> text.replace("&&", "").contains("&"))
                .map(text -> text.substring(text.indexOf('&') + 1, text.indexOf('&') + 2).toLowerCase()).toList();
    }

    /** Whether every letter is used once. */
    static boolean areDifferent(List<String> letters) {
        return letters.size() == Arrays.stream(letters.toArray()).distinct().count();
    }
}
