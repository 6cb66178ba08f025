package org.benchwright.language.internal.compile;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.model.Block;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Families;
import org.benchwright.model.Procedure;
import org.eclipse.emf.ecore.EObject;

/** The files that a procedure needs besides its own. */
public final class UsedFiles {

    private UsedFiles() {
    }

    /** Those of the families that it is for, and of the shared stages that it carries out; names that lead nowhere have none. */
    public static Set<Path> of(Procedure procedure) {
        Set<Path> files = new LinkedHashSet<>();
        for (Block block : procedure.getBlocks()) {
            if (block instanceof CarryOut carryOut) {
                add(carryOut.getShared(), procedure, files);
            }
        }
        Optional.ofNullable(procedure.getFamily()).stream().flatMap(family -> Families.lineage(family).stream())
                .forEach(family -> add(family, procedure, files));
        return files;
    }

    private static void add(EObject used, Procedure procedure, Set<Path> files) {
        if (used != null && used.eResource() != null && used.eResource() != procedure.eResource()) {
            files.add(Path.of(used.eResource().getURI().toFileString()));
        }
    }
}
