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

    /**
     * How words tell where something stands, seen from another thing.
     *
     * @return such as {@code " in line 12"} or {@code " in lark.family, line 3"}; empty where it has no place of its own
     */
    String where(EObject thing, EObject from);

    /** The same on things of another file: what is left there is read at that place of this file, and says where it is meant. */
    Remarks insteadAt(EObject place);
}
