package org.benchwright.language.internal.inspect;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.expand.Expanded;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Leaves remarks on an expanded procedure where its text was written. */
record WrittenRemarks(Expanded expanded, Remarks remarks) implements Remarks {

    @Override
    public void on(EObject thing, RemarkCode code, String... arguments) {
        remarks.on(expanded.written(thing), code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, RemarkCode code, String... arguments) {
        on(thing, part, 0, code, arguments);
    }

    @Override
    public void on(EObject thing, EStructuralFeature part, int index, RemarkCode code, String... arguments) {
        EObject written = expanded.written(thing);
        if (written.eClass().getEAllStructuralFeatures().contains(part)) {
            remarks.on(written, part, index, code, arguments);
        } else {
            remarks.on(written, code, arguments);
        }
    }
}
