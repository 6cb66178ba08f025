package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.editing.Analysis;
import org.benchwright.language.proof.Proving;
import org.benchwright.language.proof.Telling;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.author.ProofJob.Proved;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IPartListener;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.ViewPart;

/** What it proves: the procedure of the editor that is used, as its text stands; while that has errors, as it was before them. */
public final class ProofView extends ViewPart implements AuthorListener {

    /** So that a word can be typed before all is reckoned again. */
    private static final long PATIENCE = 300;

    private final IPartListener editors = new PartActivated(this::follow);
    private final Proving proving = new Proving();
    private Label told;
    private Combo names;
    private ProofPages pages;
    private Optional<Path> file = Optional.empty();
    private Optional<Telling> latest = Optional.empty();
    private Optional<ProofJob> job = Optional.empty();
    private List<Proved> procedures = List.of();
    private boolean outdated;

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(body);
        told = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).indent(8, 6).applyTo(told);
        names = new Combo(body, SWT.READ_ONLY | SWT.DROP_DOWN);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(names);
        // One that is merely left out of the layout is drawn all the same, over what is told.
        names.setVisible(false);
        names.addListener(SWT.Selection, event -> choose());
        pages = new ProofPages(body, place -> place.text().ifPresent(text -> Passages.show(getSite().getPage(), text)));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(pages.control());
        tell(Message.PROOF_NONE.text());
        Authoring.current().ifPresent(authoring -> authoring.add(this));
        getSite().getPage().addPartListener(editors);
        follow(getSite().getPage().getActiveEditor());
    }

    // ---- following the text

    private void follow(IWorkbenchPart part) {
        Optional<Path> other = Editors.file(part);
        if (part == this && outdated) {
            reckon(0);
        } else if (other.isPresent() && !other.equals(file)) {
            file = other;
            latest = Optional.empty();
            procedures = List.of();
            pages.clear();
            tell(Message.PROOF_RECKONING.text());
            reckon(0);
        }
    }

    @Override
    public void analysed(Analysis analysis) {
        OnDisplay.later(told, () -> {
            if (file.filter(analysis.file()::equals).isPresent()) {
                reckon(PATIENCE);
            }
        });
    }

    @Override
    public void checked(FolderState state) {
        OnDisplay.later(told, () -> {
            boolean ours = file.map(Path::getParent).filter(state.folder()::equals).isPresent();
            if (ours && !state.running()) {
                reckon(PATIENCE);
            }
        });
    }

    /** Not for a view that nobody sees; it makes up for it as it comes to the front. */
    private void reckon(long patience) {
        job.ifPresent(ProofJob::cancel);
        outdated = !getSite().getPage().isPartVisible(this) && getSite().getPage().getActivePart() != this;
        if (outdated || file.isEmpty()) {
            return;
        }
        Path wanted = file.orElseThrow();
        job = Authoring.current().map(authoring -> new ProofJob(authoring.folderOf(wanted), wanted, proving, latest, new ProofJob.Watcher() {
            @Override
            public void proved(Telling telling, List<Proved> all) {
                onScreen(wanted, () -> take(telling, all));
            }

            @Override
            public void notYet(Telling.NotYet errors) {
                onScreen(wanted, () -> postpone(errors));
            }

            @Override
            public void failed(String words) {
                onScreen(wanted, () -> tell(words));
            }
        }));
        job.ifPresent(next -> next.schedule(patience));
    }

    private void onScreen(Path about, Runnable work) {
        OnDisplay.later(told, () -> {
            if (file.filter(about::equals).isPresent()) {
                work.run();
            }
        });
    }

    // ---- showing

    private void postpone(Telling.NotYet errors) {
        latest = Optional.of(errors);
        tell((procedures.isEmpty() ? Message.PROOF_NOT_YET : Message.PROOF_AS_BEFORE).text(errors.errors().size()));
    }

    private void take(Telling telling, List<Proved> all) {
        latest = Optional.of(telling);
        procedures = all;
        int chosen = Math.max(0, names.getSelectionIndex());
        names.setItems(all.stream().map(each -> each.proof().title()).toArray(String[]::new));
        names.select(chosen < all.size() ? chosen : 0);
        GridData place = (GridData) names.getLayoutData();
        if (place.exclude == all.size() > 1) {
            place.exclude = !place.exclude;
            names.setVisible(!place.exclude);
            names.requestLayout();
        }
        if (all.isEmpty()) {
            pages.clear();
            tell(Message.PROOF_NO_PROCEDURE.text());
        } else {
            choose();
        }
    }

    private void choose() {
        Proved chosen = procedures.get(Math.max(0, names.getSelectionIndex()));
        pages.show(chosen);
        tell(Message.PROOF_OF.text(chosen.proof().title(), chosen.proof().revision()));
    }

    private void tell(String words) {
        if (Labels.say(told, words)) {
            told.requestLayout();
        }
    }

    @Override
    public void setFocus() {
        pages.setFocus();
    }

    @Override
    public void dispose() {
        job.ifPresent(ProofJob::cancel);
        getSite().getPage().removePartListener(editors);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        super.dispose();
    }
}
