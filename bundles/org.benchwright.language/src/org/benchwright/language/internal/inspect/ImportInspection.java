package org.benchwright.language.internal.inspect;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.Imports;
import org.benchwright.model.Import;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;

/** Imports lead to files, each once. */
final class ImportInspection implements Inspection {

    @Override
    public void file(ProcedureFile file, Remarks remarks) {
        Set<URI> seen = new HashSet<>();
        for (Import each : file.getImports()) {
            Optional<URI> target = Imports.target(file.eResource().getURI(), each.getPath());
            if (target.filter(uri -> isThere(uri, file.eResource())).isEmpty()) {
                remarks.on(each, Literals.IMPORT__PATH, RemarkCode.IMPORT_NOT_FOUND, String.valueOf(each.getPath()));
            } else if (!seen.add(target.get())) {
                remarks.on(each, Literals.IMPORT__PATH, RemarkCode.LISTED_TWICE, each.getPath());
            }
        }
    }

    private static boolean isThere(URI uri, Resource from) {
        return from.getResourceSet() != null && from.getResourceSet().getResource(uri, false) != null
                || uri.isFile() && Files.isRegularFile(Path.of(uri.toFileString()));
    }
}
