package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.present.Approving;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.PeopleWords;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Story;
import org.benchwright.ui.internal.look.Switched;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** People: everybody in the ledger's register, what they may do, and whether they can sign; and how the register is kept. */
public final class PeopleView extends ViewPart {

    private static final int SHOWN_DIGITS = 16;

    private Columns<PersonRow> columns;
    private TableViewer table;
    private Button authorise;
    private Button end;
    private Story story;
    private final Latest reading = new Latest();

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        Composite bar = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(bar);
        authorise = Buttons.push(bar, Message.AUTHORISE.text(), this::authorise);
        end = Buttons.push(bar, Message.END_AUTHORISATION.text(), () -> selected().ifPresent(this::end));
        SashForm parts = new SashForm(body, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(parts);
        columns = Columns.in(parts, SWT.NONE, PersonRow.class);
        table = columns.table();
        columns.add(Message.PEOPLE_ID.text(), 60, PersonRow::id);
        columns.add(Message.PEOPLE_NAME.text(), 160, PersonRow::name);
        columns.add(Message.PEOPLE_ROLES.text(), 180, PeopleWords::roles);
        columns.add(Message.PEOPLE_SIGNS.text(), 90, person -> (person.signs() ? Message.PEOPLE_CAN_SIGN : Message.PEOPLE_NO_KEY).text());
        columns.add(Message.PEOPLE_MAY_CARRY_OUT.text(), 250,
                person -> person.authorisations().stream().filter(may -> !may.ended()).map(PersonRow.Authorised::words)
                        .collect(Collectors.joining("; ")));
        columns.addWide(Message.PEOPLE_KEYS.text(), 200, PeopleView::keys);
        getSite().setSelectionProvider(table);
        table.addSelectionChangedListener(event -> enable());
        story = new Story(parts, 1);
        parts.setWeights(3, 2);
        enable();
        tell("");
        read();
    }

    private Optional<PersonRow> selected() {
        return columns.selected();
    }

    private List<PersonRow> people() {
        return table.getInput() instanceof List<?> rows ? rows.stream().map(PersonRow.class::cast).toList() : List.of();
    }

    private void enable() {
        Switched.enable(authorise, !people().isEmpty());
        Switched.enable(end, selected().filter(person -> person.authorisations().stream().anyMatch(may -> !may.ended())).isPresent());
    }

    // ---- who may carry out what

    /** What is offered is what has revisions in this ledger; anything else can be typed. */
    private void authorise() {
        Path ledger = getSite().getService(Desk.class).ledger();
        Background.soon(Message.PEOPLE_READ.text(), monitor -> {
            List<RevisionRow> revisions = revisions(ledger);
            OnDisplay.later(table.getControl(), () -> authorise(revisions));
        });
    }

    private static List<RevisionRow> revisions(Path ledger) {
        try {
            return Approving.here(ledger).revisions();
        } catch (CannotStoreException unreadable) {
            // Nothing is offered then; signing tells the trouble.
            return List.of();
        }
    }

    private void authorise(List<RevisionRow> revisions) {
        List<PersonRow> people = people();
        List<SignDialog.Question> questions = List.of(first(people), new SignDialog.Suggested(Message.AUTHORISE_FAMILY.text(),
                all(revisions.stream().map(RevisionRow::family))), new SignDialog.Suggested(Message.AUTHORISE_PROCEDURE.text(),
                        all(revisions.stream().map(RevisionRow::name))),
                        new SignDialog.Line(Message.AUTHORISE_FROM.text(), LocalDate.now().toString()),
                new SignDialog.Line(Message.AUTHORISE_UNTIL.text(), LocalDate.now().plusYears(1).toString()));
        sign(Message.AUTHORISE_TITLE.text(), Message.AUTHORISE_WHAT.text(), questions,
                (answers, by) -> desk().authorise(by, id(people, answers.get(0)),
                        answers.get(1).strip(), answers.get(2).strip(), answers.get(3), answers.get(4)));
    }

    /** The selected person first. */
    private SignDialog.Choice first(List<PersonRow> people) {
        return new SignDialog.Choice(Message.AUTHORISE_WHO.text(),
                Stream.concat(selected().stream(), people.stream()).map(PeopleWords::of).distinct().toList());
    }

    private static List<String> all(Stream<String> names) {
        return Stream.concat(Stream.of("*"), names.filter(name -> !name.isEmpty()).distinct().sorted()).toList();
    }

    private static String id(List<PersonRow> people, String words) {
        return people.stream().filter(person -> PeopleWords.of(person).equals(words)).map(PersonRow::id).findFirst().orElse(words);
    }

    private void end(PersonRow person) {
        List<PersonRow.Authorised> held = person.authorisations().stream().filter(may -> !may.ended()).toList();
        SignDialog.Choice which = new SignDialog.Choice(Message.END_AUTHORISATION_WHICH.text(),
                held.stream().map(PersonRow.Authorised::words).toList());
        sign(Message.END_AUTHORISATION_TITLE.text(), Message.END_AUTHORISATION_WHAT.text(PeopleWords.of(person)),
                List.of(which, new SignDialog.Line(Message.SIGN_REASON.text(), "")), (answers, by) -> {
                    PersonRow.Authorised may = held.stream().filter(each -> each.words().equals(answers.get(0))).findFirst().orElseThrow();
                    desk().endAuthorisation(by, person.id(), may.family(), may.procedure(), answers.get(1));
                });
    }

    private void sign(String title, String words, List<SignDialog.Question> questions, SignDialog.Signature signature) {
        SignDialog.Asked asked = new SignDialog.Asked(title, words, Optional.empty(), questions, people(), "", Message.SIGN_OK.text(), signature);
        SignDialog.ask(getSite().getShell(), asked, this::read);
    }

    private PeopleDesk desk() {
        return new PeopleDesk(getSite().getService(Desk.class).ledger(), Bench.Clocks.system());
    }

    // ---- who is there

    private static String keys(PersonRow person) {
        return person.keys().stream().map(key -> Message.PEOPLE_KEY.text(key.fingerprint().substring(0, SHOWN_DIGITS), key.state()))
                .collect(Collectors.joining("; "));
    }

    /** Somebody may have been entered at the terminal meanwhile. */
    private void read() {
        Latest.Reading now = reading.begin();
        Path ledger = getSite().getService(Desk.class).ledger();
        Background.soon(Message.PEOPLE_READ.text(), monitor -> {
            try {
                List<PersonRow> people = PeopleDesk.people(ledger);
                OnDisplay.later(table.getControl(), () -> now.show(() -> {
                    columns.show(people, PersonRow::id);
                    enable();
                    tell(people.isEmpty() ? Message.PEOPLE_HOW_BEGIN.text(ledger.toString()) : "");
                }));
            } catch (CannotStoreException unreadable) {
                OnDisplay.later(table.getControl(), () -> now.show(() -> tell(String.valueOf(unreadable.getMessage()))));
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
