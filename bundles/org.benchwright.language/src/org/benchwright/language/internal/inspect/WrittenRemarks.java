package org.benchwright.language.internal.inspect;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.expand.Expanded;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Leaves remarks on an expanded procedure where its text was written. */
record WrittenRemarks(Expanded expanded, Remarks remarks) implements Remarks {

    @Override
    public void on(EObject thing, RemarkCode code, String... arguments) {
        at(thing).on(expanded.origin(thing), code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, RemarkCode code, String... arguments) {
        on(thing, part, 0, code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, int index, RemarkCode code, String... arguments) {
        EObject origin = expanded.origin(thing);
        if (origin.eClass().getEAllStructuralFeatures().contains(part)) {
            at(thing).on(origin, part, index, code, arguments);
        } else {
            on(thing, code, arguments);
        }
    }

    @Override
    public Remarks insteadAt(EObject place) {
        return remarks.insteadAt(place);
    }

    @Override
    public String where(EObject thing, EObject from) {
        return remarks.where(expanded.origin(thing), expanded.origin(from));
    }

    private Remarks at(EObject thing) {
        EObject written = expanded.written(thing);
        return written == expanded.origin(thing) ? remarks : remarks.insteadAt(written);
    }
}
