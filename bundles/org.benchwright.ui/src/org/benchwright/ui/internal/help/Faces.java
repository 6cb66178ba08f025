package org.benchwright.ui.internal.help;

import java.util.HashMap;
import java.util.Map;

import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Control;

/** The fonts of a page, and how wide words are in them. Used by the display's thread. */
final class Faces {

    private final Control control;
    private final Map<Run.Face, Font> fonts;
    private final Font title;
    private final Font section;
    private final Font subsection;
    private final Map<Run.Face, Map<String, Integer>> widths = new HashMap<>();

    /** @param control whose font is that of most words; the fonts go with it */
    Faces(Control control) {
        this.control = control;
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(control.getDisplay()), control);
        FontDescriptor usual = FontDescriptor.createFrom(control.getFont());
        int height = control.getFont().getFontData()[0].getHeight();
        fonts = Map.of(Run.Face.PLAIN, control.getFont(), Run.Face.STRONG, resources.create(usual.setStyle(SWT.BOLD)),
                Run.Face.CODE, resources.create(JFaceResources.getTextFontDescriptor().setHeight(height)));
        title = resources.create(usual.increaseHeight(6).setStyle(SWT.BOLD));
        section = resources.create(usual.increaseHeight(3).setStyle(SWT.BOLD));
        subsection = resources.create(usual.increaseHeight(1).setStyle(SWT.BOLD));
    }

    Font of(Run.Face face) {
        return fonts.get(face);
    }

    Font heading(int depth) {
        return depth == 1 ? title : depth == 2 ? section : subsection;
    }

    /** How wide words are, in pixels. */
    int width(Run run) {
        return widths.computeIfAbsent(run.face(), face -> new HashMap<>()).computeIfAbsent(run.words(), words -> {
            GC gc = new GC(control);
            try {
                gc.setFont(of(run.face()));
                return gc.textExtent(words).x;
            } finally {
                gc.dispose();
            }
        });
    }
}
