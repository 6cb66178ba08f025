package org.benchwright.cli;

import java.nio.file.Path;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;

/** Where procedures come from. */
@FunctionalInterface
public interface ProcedureSource {

    /** Reads the procedure of a file for a family; whatever is wrong with it is told in the answer. */
    Reading read(Path file, FamilyChoice family);
}
