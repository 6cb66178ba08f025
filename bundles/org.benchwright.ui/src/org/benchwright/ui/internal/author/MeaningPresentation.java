package org.benchwright.ui.internal.author;

import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.Meaning;
import org.benchwright.language.editing.Style;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.ITextViewerExtension2;
import org.eclipse.jface.text.ITypedRegion;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.jface.text.presentation.IPresentationDamager;
import org.eclipse.jface.text.presentation.IPresentationRepairer;
import org.eclipse.jface.text.presentation.PresentationReconciler;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.PlatformUI;

/** Paints a text by meaning. Colours move with the typing at once, and are put right when the language has looked. */
public final class MeaningPresentation extends PresentationReconciler implements AuthorListener {

    private final StyleRuns runs = new StyleRuns();
    private final Painter painter = new Painter();
    private final EditorLook look = new EditorLook(this::repaint);
    private ITextViewer viewer;

    /** Made by the editor. */
    public MeaningPresentation() {
        setDamager(painter, IDocument.DEFAULT_CONTENT_TYPE);
        setRepairer(painter, IDocument.DEFAULT_CONTENT_TYPE);
    }

    @Override
    public void install(ITextViewer installed) {
        viewer = installed;
        super.install(installed);
        look.follow();
        Authoring.current().ifPresent(authoring -> authoring.add(this));
    }

    @Override
    public void uninstall() {
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        look.leave();
        painter.setDocument(null);
        super.uninstall();
    }

    @Override
    public void analysed(Analysis analysis) {
        OnDisplay.later(viewer.getTextWidget(), () -> {
            if (Documents.isAbout(analysis, viewer.getDocument())) {
                int[] different = runs.replace(analysis.styles());
                if (different.length == 2) {
                    invalidate(different[0], Math.min(different[1], analysis.text().length()));
                }
            }
        });
    }

    private void repaint() {
        if (viewer != null && viewer.getDocument() != null) {
            invalidate(0, viewer.getDocument().getLength());
            // The rulers beside the text keep a picture of themselves in the old look, and take theirs after this.
            Composite whole = viewer.getTextWidget().getParent();
            OnDisplay.later(whole, () -> whole.redraw(0, 0, whole.getSize().x, whole.getSize().y, true));
        }
    }

    private void invalidate(int begin, int end) {
        if (viewer instanceof ITextViewerExtension2 extension) {
            extension.invalidateTextPresentation(begin, end - begin);
        } else {
            viewer.invalidateTextPresentation();
        }
    }

    /** Damage is what was edited, with the words at its ends; repair is the runs of that place. */
    private final class Painter implements IPresentationDamager, IPresentationRepairer, IDocumentListener {

        private IDocument document;

        @Override
        public void setDocument(IDocument next) {
            if (next == document) {
                return;
            }
            if (document != null) {
                document.removeDocumentListener(this);
            }
            document = next;
            if (document != null) {
                document.addDocumentListener(this);
            }
        }

        @Override
        public void documentAboutToBeChanged(DocumentEvent event) {
            // Runs move after the change.
        }

        @Override
        public void documentChanged(DocumentEvent event) {
            runs.edited(event.getOffset(), event.getLength(), event.getText() == null ? "" : event.getText());
        }

        @Override
        public IRegion getDamageRegion(ITypedRegion partition, DocumentEvent event, boolean partitioningChanged) {
            int length = event.getText() == null ? 0 : event.getText().length();
            int begin = Math.max(0, event.getOffset() - 1);
            int end = Math.min(event.getDocument().getLength(), event.getOffset() + length + 1);
            return new Region(begin, Math.max(0, end - begin));
        }

        @Override
        public void createPresentation(TextPresentation presentation, ITypedRegion damage) {
            boolean dark = Theme.dark(PlatformUI.getWorkbench());
            int begin = damage.getOffset();
            int damageEnd = damage.getOffset() + damage.getLength();
            // Every character gets a style: where one has none, the viewer would keep an old one.
            for (Style run : runs.within(begin, damageEnd)) {
                add(presentation, begin, run.offset(), Meaning.PLAIN, dark);
                add(presentation, Math.max(begin, run.offset()), Math.min(run.end(), damageEnd), run.meaning(), dark);
                begin = Math.max(begin, run.end());
            }
            add(presentation, begin, damageEnd, Meaning.PLAIN, dark);
        }

        private void add(TextPresentation presentation, int begin, int end, Meaning meaning, boolean dark) {
            if (end > begin) {
                TextAttribute look = MeaningColours.of(meaning, dark);
                presentation.addStyleRange(new StyleRange(begin, end - begin, look.getForeground(), look.getBackground(), look.getStyle()));
            }
        }
    }
}
