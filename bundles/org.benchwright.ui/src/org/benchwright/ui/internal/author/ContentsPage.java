package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.Place;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.e4.core.services.events.IEventBroker;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.jface.viewers.StyledString.Styler;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.TextStyle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.Page;
import org.eclipse.ui.texteditor.ITextEditor;
import org.osgi.service.event.EventHandler;

/** The contents of one text. A row is gone to by selecting it; what was unfolded stays so while the text is written. */
final class ContentsPage extends Page implements AuthorListener {

    private final ITextEditor editor;
    private final Path file;
    private final IEventBroker broker = PlatformUI.getWorkbench().getService(IEventBroker.class);
    // The words beside a name keep the colour that they were given.
    private final EventHandler lookChanged = event -> this.rows.refresh();
    private TreeViewer rows;
    private List<ContentsNode> newest = List.of();

    ContentsPage(ITextEditor editor, Path file) {
        this.editor = editor;
        this.file = file;
    }

    @Override
    public void createControl(Composite parent) {
        rows = new TreeViewer(parent, SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL);
        rows.setUseHashlookup(true);
        rows.setContentProvider(new Children());
        rows.setLabelProvider(new DelegatingStyledCellLabelProvider(new Labels()));
        rows.setInput(newest);
        broker.subscribe(IThemeEngine.Events.THEME_CHANGED, lookChanged);
        rows.addPostSelectionChangedListener(event -> {
            if (rows.getControl().isFocusControl() && event.getStructuredSelection().getFirstElement() instanceof ContentsNode node) {
                ContentsRow row = node.in(newest).row();
                editor.selectAndReveal(row.offset(), row.length());
            }
        });
        rows.addOpenListener(event -> {
            if (rows.getStructuredSelection().getFirstElement() instanceof ContentsNode node) {
                ContentsRow row = node.in(newest).row();
                Passages.show(getSite().getPage(), new Place(file, row.offset(), row.length()));
            }
        });
        Authoring.current().ifPresent(authoring -> {
            authoring.add(this);
            authoring.folderOf(file).latest(file).ifPresent(this::show);
        });
    }

    @Override
    public void analysed(Analysis analysis) {
        if (analysis.file().equals(file)) {
            OnDisplay.later(rows.getControl(), () -> show(analysis));
        }
    }

    private void show(Analysis analysis) {
        List<ContentsNode> before = newest;
        newest = ContentsNode.all(analysis.contents(), "");
        if (ContentsNode.lookAlike(before, newest)) {
            return;
        }
        rows.getControl().setRedraw(false);
        try {
            Object[] unfolded = rows.getExpandedElements();
            rows.setInput(newest);
            rows.setExpandedElements(before.isEmpty() ? unfoldedAtFirst() : unfolded);
        } finally {
            rows.getControl().setRedraw(true);
        }
    }

    /** Stages with their steps; hazards and the like can be unfolded by who wants them. */
    private Object[] unfoldedAtFirst() {
        Stream<ContentsNode> inner = newest.stream().flatMap(node -> node.children().stream())
                .filter(node -> node.row().kind() != ContentsKind.GROUP);
        return Stream.concat(newest.stream(), inner).toArray();
    }

    @Override
    public Control getControl() {
        return rows == null ? null : rows.getControl();
    }

    @Override
    public void setFocus() {
        rows.getControl().setFocus();
    }

    @Override
    public void dispose() {
        broker.unsubscribe(lookChanged);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        super.dispose();
    }

    private static final class Children implements ITreeContentProvider {

        @Override
        public Object[] getElements(Object input) {
            return ((List<?>) input).toArray();
        }

        @Override
        public Object[] getChildren(Object parent) {
            return ((ContentsNode) parent).children().toArray();
        }

        @Override
        public Object getParent(Object child) {
            return null;
        }

        @Override
        public boolean hasChildren(Object parent) {
            return !((ContentsNode) parent).children().isEmpty();
        }
    }

    private static final class Labels extends LabelProvider implements IStyledLabelProvider {

        private static final Styler QUIET = new Styler() {
            @Override
            public void applyStyles(TextStyle style) {
                style.foreground = Theme.palette().quiet();
            }
        };

        @Override
        public StyledString getStyledText(Object element) {
            ContentsNode node = (ContentsNode) element;
            return node.isNamed()
                    ? new StyledString(node.row().name()).append("  " + node.row().label(), QUIET)
                    : new StyledString(node.row().label());
        }

        @Override
        public String getText(Object element) {
            return getStyledText(element).getString();
        }

        @Override
        public Image getImage(Object element) {
            return Pictures.of(((ContentsNode) element).row().kind());
        }
    }
}
