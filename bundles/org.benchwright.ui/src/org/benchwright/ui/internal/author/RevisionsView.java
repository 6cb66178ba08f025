package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Revisions;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.app.ProcedureFiles;
import org.benchwright.ui.internal.author.RevisionsShown.Line;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.ui.IPartListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.part.ViewPart;

/**
 * Revisions: how those of the procedure that is open stand, or those of all procedures; what the selected one changes, by meaning; and
 * signing them.
 */
public final class RevisionsView extends ViewPart implements AuthorListener {

    /** So that a change comes to rest before all is read again. */
    private static final long PATIENCE = 300;
    private static final int TITLE_WIDTH = 250;

    private final IPartListener editors = new PartActivated(this::follow);
    private Label told;
    private Button all;
    private Columns<Line> columns;
    private TableViewer table;
    private TableColumn titles;
    private RevisionStory story;
    private Optional<Path> file = Optional.empty();
    private Optional<RevisionsJob> job = Optional.empty();
    private RevisionsShown shown = RevisionsShown.NOTHING;
    /** Until something is shown, all is read, changed or not. */
    private boolean anew;
    private boolean outdated;
    /** What to select once it is read. */
    private Optional<Line> justSigned = Optional.empty();

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(body);
        told = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(told);
        Composite keys = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(4).applyTo(keys);
        Buttons.push(keys, Message.REVISIONS_PREPARE.text(), this::prepare);
        Buttons.push(keys, Message.REVISIONS_APPROVE.text(), this::approve);
        Buttons.push(keys, Message.REVISIONS_WITHDRAW.text(), this::withdraw);
        all = Buttons.check(keys, Message.REVISIONS_ALL.text(), this::readAgain);
        SashForm parts = new SashForm(body, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(parts);
        columns = Columns.in(parts, SWT.NONE, Line.class);
        table = columns.table();
        titles = columns.add(Message.REVISIONS_PROCEDURE.text(), 0, line -> line.row().procedure());
        columns.add(Message.REVISIONS_NUMBER.text(), 80, line -> String.valueOf(line.row().number()));
        columns.add(Message.REVISIONS_STANDING.text(), 190, Line::words);
        columns.add(Message.REVISIONS_FAMILY.text(), 100, line -> line.row().family());
        columns.addWide(Message.REVISIONS_HISTORY.text(), 420, line -> String.join("; ", line.row().history()));
        table.addPostSelectionChangedListener(event -> selected().ifPresent(line -> story.show(line, file)));
        getSite().setSelectionProvider(table);
        story = new RevisionStory(parts, desk());
        parts.setWeights(2, 3);
        Authoring.current().ifPresent(authoring -> authoring.add(this));
        getSite().getPage().addPartListener(editors);
        follow(getSite().getPage().getActiveEditor());
        readAgain();
    }

    /**
     * The view, brought to the front.
     *
     * @throws ExecutionException if it can't be
     */
    static RevisionsView shown(ExecutionEvent event) throws ExecutionException {
        IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindowChecked(event);
        try {
            return (RevisionsView) window.getWorkbench().showPerspective(Ids.AUTHOR, window).showView(Ids.REVISIONS_VIEW);
        } catch (WorkbenchException e) {
            throw new ExecutionException(String.valueOf(e.getMessage()), e);
        }
    }

    private Desk desk() {
        return getSite().getService(Desk.class);
    }

    // ---- following the text and the ledger

    private void follow(IWorkbenchPart part) {
        Optional<Path> other = Editors.file(part).filter(ProcedureFiles::isProcedure);
        if (part == this) {
            Authoring.current().ifPresent(Authoring::look);
            if (outdated) {
                read(0);
            }
        } else if (other.isPresent() && !other.equals(file)) {
            file = other;
            shown = RevisionsShown.NOTHING;
            // What another procedure's revisions are is not to be signed by mistake meanwhile.
            table.setInput(List.of());
            story.clear();
            read(0);
        }
    }

    @Override
    public void checked(FolderState state) {
        OnDisplay.later(told, () -> {
            if (!state.running() && file.map(Path::getParent).filter(state.folder()::equals).isPresent()) {
                read(PATIENCE);
            }
        });
    }

    @Override
    public void revised() {
        OnDisplay.later(told, () -> read(PATIENCE));
    }

    /** Also if nothing seems to have changed, and also if another reading takes the place of this one before it has told. */
    private void readAgain() {
        anew = true;
        read(0);
    }

    /** Not for a view that nobody sees; it makes up for it as it comes to the front. */
    private void read(long patience) {
        job.ifPresent(RevisionsJob::cancel);
        outdated = !getSite().getPage().isPartVisible(this) && getSite().getPage().getActivePart() != this;
        if (!outdated) {
            Optional<Path> wanted = file;
            RevisionsJob next = new RevisionsJob(desk(), wanted, all.getSelection(), anew ? RevisionsShown.NOTHING : shown,
                    now -> OnDisplay.later(told, () -> {
                if (wanted.equals(file)) {
                    show(now);
                }
            }));
            job = Optional.of(next);
            next.schedule(patience);
        }
    }

    // ---- showing

    private void show(RevisionsShown now) {
        Optional<Line> before = justSigned.or(this::selected);
        justSigned = Optional.empty();
        shown = now;
        anew = false;
        titles.setWidth(all.getSelection() || now.texts().isEmpty() ? TITLE_WIDTH : 0);
        table.setInput(now.lines());
        tell(words(now));
        Optional<Line> again = before.flatMap(line -> now.lines().stream().filter(line::isOf).findFirst()).or(() -> now.lines().stream().findFirst());
        again.ifPresentOrElse(line -> table.setSelection(new StructuredSelection(line), true), story::clear);
    }

    private static String words(RevisionsShown now) {
        if (now.trouble().isPresent()) {
            return now.trouble().get();
        } else if (now.file().isEmpty()) {
            return (now.lines().isEmpty() ? Message.REVISIONS_NONE : Message.REVISIONS_NOT_OPEN).text();
        }
        String name = String.valueOf(now.file().get().getFileName());
        return now.texts().stream().map(text -> Message.REVISIONS_TEXT.text(name, text.family(), String.valueOf(text.number()), text.words()))
                .collect(Collectors.joining("\n"));
    }

    private void tell(String words) {
        if (Labels.say(told, words)) {
            told.requestLayout();
        }
    }

    private Optional<Line> selected() {
        return columns.selected();
    }

    // ---- signing

    /** Has somebody sign the text of the procedure that is open as prepared. */
    void prepare() {
        signing().text(this::family, false);
    }

    /** Has somebody approve the text of the procedure that is open. */
    void approve() {
        signing().text(this::family, true);
    }

    /** Has somebody take the selected revision back. */
    void withdraw() {
        signing().withdraw(selected().map(Line::row).filter(row -> row.state() != RevisionRow.State.DRAFT));
    }

    private RevisionSigning signing() {
        return new RevisionSigning(getSite(), desk(), file, this::signed);
    }

    /** For which family: that of the selected line where the text of the file is for it too, else the one that the procedure names. */
    private FamilyChoice family() {
        List<String> families = shown.texts().stream().map(RevisionRow::family).toList();
        return selected().map(line -> line.row().family()).filter(families::contains).<FamilyChoice>map(FamilyChoice.Called::new)
                .orElseGet(FamilyChoice.AsWritten::new);
    }

    private void signed(RevisionRow row) {
        Authoring.current().ifPresent(Authoring::look);
        justSigned = Optional.of(new Line(row, true));
        readAgain();
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }

    @Override
    public void dispose() {
        job.ifPresent(RevisionsJob::cancel);
        getSite().getPage().removePartListener(editors);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        super.dispose();
    }
}
