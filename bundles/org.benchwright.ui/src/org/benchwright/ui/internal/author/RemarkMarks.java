package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.jface.text.source.ISourceViewer;

/** Shows the remarks on a document in its editor: only differences are touched, so that nothing flickers. */
final class RemarkMarks implements AuthorListener {

    private final ISourceViewer viewer;

    RemarkMarks(ISourceViewer viewer) {
        this.viewer = viewer;
    }

    @Override
    public void analysed(Analysis analysis) {
        OnDisplay.later(viewer.getTextWidget(), () -> {
            IDocument document = viewer.getDocument();
            if (Documents.isAbout(analysis, document) && viewer.getAnnotationModel() != null) {
                show(analysis.remarks(), document.getLength(), viewer.getAnnotationModel());
            }
        });
    }

    private static void show(List<Remark> remarks, int length, IAnnotationModel model) {
        Map<Annotation, Position> added = new HashMap<>();
        List<Annotation> outdated = new ArrayList<>();
        List<Remark> wanted = new ArrayList<>(remarks);
        for (Iterator<Annotation> known = model.getAnnotationIterator(); known.hasNext();) {
            if (known.next() instanceof RemarkMark mark && !keeps(mark, wanted, length, model)) {
                outdated.add(mark);
            }
        }
        wanted.forEach(remark -> added.put(new RemarkMark(remark), position(remark, length)));
        if (!added.isEmpty() || !outdated.isEmpty()) {
            ((IAnnotationModelExtension) model).replaceAnnotations(outdated.toArray(Annotation[]::new), added);
        }
    }

    /** A mark that has moved with the text to where its remark is now can stay. */
    private static boolean keeps(RemarkMark mark, List<Remark> wanted, int length, IAnnotationModel model) {
        Position at = model.getPosition(mark);
        return wanted.removeIf(remark -> remark.equals(mark.remark()) && position(remark, length).equals(at));
    }

    /** At least one character, or nothing could be seen. */
    private static Position position(Remark remark, int length) {
        int begin = Math.min(remark.offset(), Math.max(0, length - 1));
        int end = Math.min(length, Math.max(remark.offset() + remark.length(), begin + 1));
        return new Position(begin, end - begin);
    }
}
