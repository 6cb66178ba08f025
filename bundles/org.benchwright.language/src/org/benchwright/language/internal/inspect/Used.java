package org.benchwright.language.internal.inspect;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/** Gathers what a part of a text refers to. */
final class Used {

    private final Set<EObject> used = Collections.newSetFromMap(new IdentityHashMap<>());
    /** Most things of a text refer to nothing, whatever they say. */
    private final Map<EClass, List<EReference>> references = new HashMap<>();

    private Used() {
    }

    /** All that a thing and everything in it refers to. */
    static Set<EObject> in(EObject thing) {
        Used gathered = new Used();
        gathered.add(thing);
        thing.eAllContents().forEachRemaining(gathered::add);
        return gathered.used;
    }

    private void add(EObject each) {
        for (EReference reference : references.computeIfAbsent(each.eClass(), Used::references)) {
            Object value = each.eGet(reference);
            if (value instanceof Collection<?> many) {
                many.forEach(one -> used.add((EObject) one));
            } else if (value != null) {
                used.add((EObject) value);
            }
        }
    }

    private static List<EReference> references(EClass kind) {
        return kind.getEAllReferences().stream().filter(reference -> !reference.isContainment() && !reference.isContainer()).toList();
    }
}
