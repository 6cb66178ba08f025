package org.benchwright.ui.internal.help;

import java.util.List;

import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Above a page: its headings to go to, and a field to search it. */
final class PageBar {

    private static final int SEARCH_WIDTH = 150;

    private final Composite bar;
    private final Combo headings;
    private final Text search;
    private final Label found;
    private PageSheet sheet;

    PageBar(Composite parent) {
        bar = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).margins(6, 4).applyTo(bar);
        headings = new Combo(bar, SWT.DROP_DOWN | SWT.READ_ONLY);
        headings.setToolTipText(Message.MANUAL_HEADINGS.text());
        headings.addListener(SWT.Selection, event -> sheet.go(sheet.headings().get(headings.getSelectionIndex()).start()));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).align(SWT.FILL, SWT.CENTER).applyTo(headings);
        search = new Text(bar, SWT.SINGLE | SWT.BORDER);
        search.setMessage(Message.MANUAL_SEARCH.text());
        search.setToolTipText(Message.MANUAL_SEARCH_KEYS.text());
        search.addListener(SWT.Modify, event -> seek(new Search(sheet.passages(), search.getText()).first()));
        search.addListener(SWT.KeyDown, this::key);
        GridDataFactory.fillDefaults().hint(SEARCH_WIDTH, SWT.DEFAULT).align(SWT.FILL, SWT.CENTER).applyTo(search);
        found = new Label(bar, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).exclude(true).applyTo(found);
    }

    Control control() {
        return bar;
    }

    /** What it is above. */
    void of(PageSheet page) {
        sheet = page;
    }

    /** Another page is shown. */
    void headings(List<SetPage.HeadingAt> next) {
        headings.setItems(next.stream().map(heading -> "    ".repeat(Math.max(0, heading.depth() - 2)) + heading.words()).toArray(String[]::new));
        headings.select(0);
        say("");
    }

    /** Goes to the field for what is looked for. */
    void search() {
        search.setFocus();
        search.selectAll();
    }

    /** Says something above the page; nothing if it is empty. */
    void say(String words) {
        Labels.say(found, words);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).exclude(words.isEmpty()).applyTo(found);
        found.setVisible(!words.isEmpty());
        bar.getParent().layout(true, true);
    }

    private void key(Event event) {
        Search all = new Search(sheet.passages(), search.getText());
        int caret = sheet.control().getSelection().x;
        if (event.character == SWT.CR) {
            event.doit = false;
            seek((event.stateMask & SWT.SHIFT) == 0 ? all.behind(caret) : all.before(caret));
        } else if (event.character == SWT.ESC) {
            event.doit = false;
            sheet.control().setFocus();
        }
    }

    private void seek(Search.Hit hit) {
        hit.found().ifPresent(sheet::mark);
        if (search.getText().isEmpty()) {
            say("");
        } else {
            say(hit.of() == 0 ? Message.MANUAL_NOT_FOUND.text() : Message.MANUAL_FOUND.text(hit.number(), hit.of()));
        }
    }
}
