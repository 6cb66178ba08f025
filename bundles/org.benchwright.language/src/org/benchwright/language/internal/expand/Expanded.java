package org.benchwright.language.internal.expand;

import java.util.IdentityHashMap;
import java.util.Map;

import org.benchwright.model.CarryOut;
import org.benchwright.model.Procedure;
import org.eclipse.emf.ecore.EObject;

/**
 * A procedure with every shared stage in its place.
 *
 * @param procedure the procedure; the one that was written where it carries out no shared stage, else a copy of it
 * @param origins   for everything in a copy, what it was copied from
 * @param places    for everything that came from a shared stage, where that is carried out
 */
public record Expanded(Procedure procedure, Map<EObject, EObject> origins, Map<EObject, CarryOut> places) {

    /** A procedure that is as it was written. */
    static Expanded asWritten(Procedure procedure) {
        return new Expanded(procedure, new IdentityHashMap<>(), new IdentityHashMap<>());
    }

    /**
     * Where something stands in the text of the procedure's own file.
     *
     * @param thing something of {@link #procedure}
     * @return what was written; what came from a shared stage of another file is said of the place where that is carried out
     */
    public EObject written(EObject thing) {
        EObject origin = origin(thing);
        CarryOut place = places.get(thing);
        return place != null && place.eResource() != origin.eResource() ? place : origin;
    }

    /** What was written, in whatever file. */
    public EObject origin(EObject thing) {
        return origins.getOrDefault(thing, thing);
    }
}
