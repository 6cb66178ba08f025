package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Folding in the window's editor: by the grammar, and what is folded stays so while one types elsewhere. */
class FoldingWindowTest extends AtTheEditor {

    private ProjectionViewer viewer;

    @BeforeEach
    void waitForFolds() {
        viewer = (ProjectionViewer) Engineer.viewer(editor);
        Screen.waitFor("folds", () -> fold("step lamps").isPresent());
    }

    private IDocument document() {
        return viewer.getDocument();
    }

    private ProjectionAnnotationModel model() {
        return viewer.getProjectionAnnotationModel();
    }

    private List<Annotation> folds() {
        List<Annotation> folds = new ArrayList<>();
        for (Iterator<Annotation> all = model().getAnnotationIterator(); all.hasNext();) {
            folds.add(all.next());
        }
        return folds;
    }

    /** What is folded with a line that begins so, blanks aside. */
    private String passage(Annotation fold) {
        Position at = model().getPosition(fold);
        return document().get().substring(at.getOffset(), at.getOffset() + at.getLength()).strip();
    }

    private Optional<Annotation> fold(String begin) {
        return folds().stream().filter(fold -> passage(fold).startsWith(begin)).findFirst();
    }

    @Test
    void aStepFoldsFromItsFirstLineToItsBrace() {
        String lamps = passage(fold("step lamps").orElseThrow());
        assertTrue(lamps.endsWith("}") && lamps.contains("otherwise conclude rejected"), lamps);
        assertEquals(1, lamps.split("step ", -1).length - 1, lamps);
        assertTrue(fold("// Millbrook").isPresent(), "the lines above the procedure");
        assertFalse(fold("expect").isPresent(), "what has one line has nothing to fold");
    }

    @Test
    void whatIsFoldedStaysSoWhileOneTypesElsewhere() {
        model().collapse(fold("step lamps").orElseThrow());
        Screen.settle();
        assertFalse(Engineer.text(editor).getText().contains("expect pwr steady within 2 s of on"), "out of sight");
        Engineer.replace(editor, "step plate \"", "// A line more.\n        step plate \"");
        Screen.waitFor("the fold further down", () -> fold("step lamps").isPresent()
                && model().getPosition(fold("step lamps").orElseThrow()).getOffset() > document().get().indexOf("A line more"));
        Screen.waitForDrawing();
        assertTrue(fold("step lamps").map(ProjectionAnnotation.class::cast).orElseThrow().isCollapsed());
        assertFalse(Engineer.text(editor).getText().contains("expect pwr steady within 2 s of on"), "still out of sight");
    }

    @Test
    void aNewStepCanBeFoldedAtOnce() {
        Engineer.replace(editor, "step plate \"", "step extra \"Look.\" {\n            confirm \"It is there.\"\n        }\n        step plate \"");
        String extra = "step extra \"Look.\" {\n            confirm \"It is there.\"\n        }";
        Screen.waitFor("its fold", () -> fold("step extra").map(this::passage).filter(extra::equals).isPresent());
        assertTrue(fold("step plate").isPresent(), "and that of the step behind it");
    }
}
