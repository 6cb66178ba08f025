package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.language.editing.Meaning;
import org.benchwright.language.editing.Style;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ILeafNode;

/** Styles in the order of a text. What stands together and means the same is one: the parts of a number. */
final class StyleRun {

    private final List<Style> styles = new ArrayList<>();
    /** A long text uses few places of the grammar, each of them thousands of times. */
    private final Map<EObject, Meaning> known = new IdentityHashMap<>();

    void add(ILeafNode leaf) {
        if (leaf.getLength() > 0 && !leaf.getText().isBlank()) {
            add(new Style(leaf.getOffset(), leaf.getLength(), Styles.meaning(leaf, element -> known.computeIfAbsent(element, Styles::meaning))));
        }
    }

    /** Those of the text that follows. */
    void addAll(List<Style> next) {
        if (!next.isEmpty()) {
            add(next.get(0));
            styles.addAll(next.subList(1, next.size()));
        }
    }

    private void add(Style next) {
        Style last = styles.isEmpty() ? null : styles.get(styles.size() - 1);
        if (last != null && last.meaning() == next.meaning() && last.end() == next.offset()) {
            styles.set(styles.size() - 1, new Style(last.offset(), last.length() + next.length(), last.meaning()));
        } else {
            styles.add(next);
        }
    }

    List<Style> all() {
        return styles;
    }
}
