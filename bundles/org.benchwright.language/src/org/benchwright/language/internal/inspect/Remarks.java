package org.benchwright.language.internal.inspect;

import org.benchwright.language.RemarkCode;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Where inspections leave what they have to say. */
public interface Remarks {

    /** On a thing: at its name where it has one, else at the beginning of it. */
    void on(EObject thing, RemarkCode code, String... arguments);

    /** On a part of a thing. */
    void on(EObject thing, EStructuralFeature part, RemarkCode code, String... arguments);

    /** On one item of a part that is a list. */
    void on(EObject thing, EStructuralFeature part, int index, RemarkCode code, String... arguments);

    /** The same on things of another file: what is left there is read at that place of this file, and says where it is meant. */
    Remarks insteadAt(EObject place);
}
