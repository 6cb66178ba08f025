package org.benchwright.language.internal;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.LanguageServices;
import org.benchwright.model.ProcedureFile;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;

/** Which other files a file sees: those of its own folder, and those of the folders from which it imports one. */
public final class Imports {

    private Imports() {
    }

    /**
     * Where an import leads.
     *
     * @param from the file that imports
     * @param path as written
     * @return the file; nothing where the path is no relative one to a family or procedure file
     */
    public static Optional<URI> target(URI from, String path) {
        boolean ours = path != null && (path.endsWith(LanguageServices.FAMILY_ENDING) || path.endsWith(LanguageServices.PROCEDURE_ENDING));
        if (!ours || path.startsWith("/") || path.contains("\\") || path.contains(":") || path.chars().anyMatch(Character::isISOControl)) {
            return Optional.empty();
        }
        URI relative = URI.createURI(URI.encodeFragment(path, true).replace("%25", "%"));
        return from.isHierarchical() && !from.isRelative() ? Optional.of(relative.resolve(from)) : Optional.empty();
    }

    /** The files that a file imports, as far as they can be files at all. */
    public static List<URI> targets(Resource file) {
        return content(file).stream().flatMap(content -> content.getImports().stream())
                .flatMap(each -> target(file.getURI(), each.getPath()).stream()).distinct().toList();
    }

    /** The folders whose files a file sees. */
    public static Set<URI> folders(Resource file) {
        Set<URI> folders = new LinkedHashSet<>();
        folders.add(folder(file.getURI()));
        targets(file).forEach(target -> folders.add(folder(target)));
        return folders;
    }

    /** The folder of a file. */
    public static URI folder(URI file) {
        return file.segmentCount() == 0 ? file : file.trimSegments(1);
    }

    /** What a file says, as far as it could be read; nothing where that is no file of ours. */
    public static Optional<ProcedureFile> content(Resource file) {
        return file.getContents().stream().filter(ProcedureFile.class::isInstance).map(ProcedureFile.class::cast).findFirst();
    }
}
