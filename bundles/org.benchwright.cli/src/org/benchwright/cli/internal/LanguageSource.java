package org.benchwright.cli.internal;

import java.nio.file.Path;

import org.benchwright.cli.ProcedureSource;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;

/** Procedures from files; the language is started when the first one is read. */
public final class LanguageSource implements ProcedureSource {

    @Override
    public Reading read(Path file, FamilyChoice family) {
        return new ProcedureReader(LanguageServices.create()).read(file, family);
    }
}
