package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.Fold;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;

/** Shows in an editor what can be folded; what was folded stays so while the text is written. */
final class FoldMarks implements AuthorListener {

    private final ProjectionViewer viewer;

    FoldMarks(ProjectionViewer viewer) {
        this.viewer = viewer;
    }

    @Override
    public void analysed(Analysis analysis) {
        OnDisplay.later(viewer.getTextWidget(), () -> {
            if (Documents.isAbout(analysis, viewer.getDocument()) && viewer.getProjectionAnnotationModel() != null) {
                show(analysis.folds(), viewer.getDocument(), viewer.getProjectionAnnotationModel());
            }
        });
    }

    private static void show(List<Fold> folds, IDocument document, ProjectionAnnotationModel model) {
        Map<Integer, Position> wanted = wanted(folds, document);
        Map<Annotation, Position> added = new HashMap<>();
        List<Annotation> outdated = new ArrayList<>();
        for (Iterator<Annotation> known = model.getAnnotationIterator(); known.hasNext();) {
            Annotation fold = known.next();
            Position at = model.getPosition(fold);
            Position now = at == null ? null : wanted.remove(at.getOffset());
            if (now == null || !now.equals(at)) {
                outdated.add(fold);
            }
            if (now != null && !now.equals(at)) {
                added.put(new ProjectionAnnotation(fold instanceof ProjectionAnnotation before && before.isCollapsed()), now);
            }
        }
        wanted.values().forEach(position -> added.put(new ProjectionAnnotation(), position));
        if (!added.isEmpty() || !outdated.isEmpty()) {
            model.modifyAnnotations(outdated.toArray(Annotation[]::new), added, new Annotation[0]);
        }
    }

    /** Whole lines, by where they begin; of those that begin in one line the longest. */
    private static Map<Integer, Position> wanted(List<Fold> folds, IDocument document) {
        Map<Integer, Position> wanted = new TreeMap<>();
        for (Fold fold : folds) {
            try {
                int from = document.getLineOffset(document.getLineOfOffset(fold.offset()));
                int last = document.getLineOfOffset(fold.offset() + fold.length());
                int end = last + 1 < document.getNumberOfLines() ? document.getLineOffset(last + 1) : document.getLength();
                wanted.merge(from, new Position(from, end - from), (one, other) -> one.getLength() >= other.getLength() ? one : other);
            } catch (BadLocationException impossible) {
                // The text is the one that the folds are about.
                ILog.of(FoldMarks.class).error(String.valueOf(impossible.getMessage()), impossible);
            }
        }
        return wanted;
    }
}
