package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.PeopleWords;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** People: everybody in the ledger's register, what they may do, and whether they can sign; and how the register is kept. */
public final class PeopleView extends ViewPart {

    private static final int SHOWN_DIGITS = 16;

    private TableViewer table;
    private Story story;

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        SashForm parts = new SashForm(body, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(parts);
        table = new TableViewer(parts, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.getTable().setHeaderVisible(true);
        table.setContentProvider(ArrayContentProvider.getInstance());
        Columns<PersonRow> columns = new Columns<>(table, PersonRow.class);
        columns.add(Message.PEOPLE_ID.text(), 70, PersonRow::id);
        columns.add(Message.PEOPLE_NAME.text(), 200, PersonRow::name);
        columns.add(Message.PEOPLE_ROLES.text(), 220, PeopleWords::roles);
        columns.add(Message.PEOPLE_SIGNS.text(), 130, person -> (person.signs() ? Message.PEOPLE_CAN_SIGN : Message.PEOPLE_NO_KEY).text());
        columns.add(Message.PEOPLE_KEYS.text(), 420, PeopleView::keys);
        getSite().setSelectionProvider(table);
        story = new Story(parts, 1);
        parts.setWeights(3, 2);
        tell("");
        read();
    }

    private static String keys(PersonRow person) {
        return person.keys().stream().map(key -> Message.PEOPLE_KEY.text(key.fingerprint().substring(0, SHOWN_DIGITS), key.state()))
                .collect(Collectors.joining("; "));
    }

    /** Somebody may have been entered at the terminal meanwhile. */
    private void read() {
        Path ledger = getSite().getService(Desk.class).ledger();
        Background.soon(Message.PEOPLE_READ, monitor -> {
            try {
                List<PersonRow> people = PeopleDesk.people(ledger);
                OnDisplay.later(table.getControl(), () -> {
                    if (!people.equals(table.getInput())) {
                        table.setInput(people);
                    }
                    tell(people.isEmpty() ? Message.PEOPLE_HOW_BEGIN.text(ledger.toString()) : "");
                });
            } catch (CannotStoreException unreadable) {
                OnDisplay.later(table.getControl(), () -> tell(String.valueOf(unreadable.getMessage())));
            }
        });
    }

    private void tell(String first) {
        story.clear();
        if (!first.isEmpty()) {
            story.strong(first);
            story.paragraph("");
        }
        Message.PEOPLE_HOW.text(String.valueOf(getSite().getService(Desk.class).ledger().getFileName())).lines().forEach(story::paragraph);
        story.showBeginning();
    }

    @Override
    public void setFocus() {
        read();
        table.getControl().setFocus();
    }
}
