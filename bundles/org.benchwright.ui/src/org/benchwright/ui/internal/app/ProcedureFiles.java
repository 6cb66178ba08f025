package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;

/** The files of the procedures' folder. */
public final class ProcedureFiles {

    private ProcedureFiles() {
    }

    /**
     * Procedures first, then families, each by name; none if there is no folder.
     *
     * @throws IOException if the folder can't be read
     */
    public static List<Path> all(Optional<Path> folder) throws IOException {
        return Stream.concat(ending(folder, LanguageServices.PROCEDURE_ENDING).stream(),
                ending(folder, LanguageServices.FAMILY_ENDING).stream()).toList();
    }

    /**
     * Procedures by name; none if there is no folder.
     *
     * @throws IOException if the folder can't be read
     */
    public static List<Path> procedures(Optional<Path> folder) throws IOException {
        return ending(folder, LanguageServices.PROCEDURE_ENDING);
    }

    /** Whether a file holds families or procedures, by its name. */
    public static boolean isOne(Path file) {
        return isProcedure(file) || ends(file, LanguageServices.FAMILY_ENDING);
    }

    /** Whether a file holds procedures, by its name. */
    public static boolean isProcedure(Path file) {
        return ends(file, LanguageServices.PROCEDURE_ENDING);
    }

    private static boolean ends(Path file, String ending) {
        return String.valueOf(file.getFileName()).endsWith(ending);
    }

    private static List<Path> ending(Optional<Path> folder, String ending) throws IOException {
        if (folder.isEmpty()) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder.get())) {
            return files.filter(file -> ends(file, ending)).sorted().toList();
        }
    }
}
