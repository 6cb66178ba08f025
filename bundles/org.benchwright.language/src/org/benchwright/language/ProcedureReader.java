package org.benchwright.language;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.language.internal.LikeFamilies;
import org.benchwright.language.internal.ProcedureText;
import org.benchwright.language.internal.Variation;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.benchwright.language.internal.compile.UsedFiles;
import org.benchwright.language.internal.proof.Provables;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.Telling;
import org.benchwright.model.Procedure;

/** Reads one procedure in order to carry it out. */
public final class ProcedureReader {

    private final LanguageServices services;

    /** @param services what reads and checks */
    public ProcedureReader(LanguageServices services) {
        this.services = services;
    }

    /**
     * Reads, checks and compiles the procedure of a file. Errors in the families and shared stages that it refers to, in whatever
     * file, count as its own.
     *
     * @param file a procedure file that holds one procedure
     * @return its plan, or why there is none
     */
    public Reading read(Path file) {
        return read(file, new FamilyChoice.AsWritten());
    }

    /**
     * Reads, checks and compiles the procedure of a file for one of the families that it applies to. For another than the one that it names
     * it is read as if it named that one, so that everything is checked for it by itself; it has to be sound for the named one first.
     *
     * @param file   a procedure file that holds one procedure
     * @param choice which family
     * @return its plan for that family, or why there is none
     */
    public Reading read(Path file, FamilyChoice choice) {
        Checked alone = services.check(List.of(file));
        if (alone.hasErrors() || alone.procedures().size() != 1) {
            return new Reading.Refused(alone.remarks(), alone.procedures().size());
        }
        Optional<CheckedFile> own = own(alone, file);
        return own.isPresent() ? read(own.get(), choice) : new Reading.Refused(alone.remarks(), 0);
    }

    /**
     * The families that the procedure of a file can be read for by {@link FamilyChoice.Called}.
     *
     * @param file a procedure file that holds one procedure
     * @return their names, the one that the procedure names first; empty where there are errors, or not exactly one procedure
     */
    public List<String> families(Path file) {
        Checked alone = services.check(List.of(file));
        return alone.hasErrors() || alone.procedures().size() != 1 ? List.of() : LikeFamilies.of(alone.procedures().get(0)).names();
    }

    private Reading read(CheckedFile written, FamilyChoice choice) {
        Procedure procedure = written.content().getProcedures().get(0);
        String named = procedure.getFamily().getName();
        Reading asWritten = together(written, written, services::check);
        if (asWritten instanceof Reading.Refused) {
            return asWritten;
        }
        LikeFamilies families = LikeFamilies.of(procedure);
        List<String> chosen = families.chosen(choice);
        if (chosen.size() != 1) {
            return new Reading.Refused(List.of(Variation.onClause(written, procedure, RemarkCode.FAMILY_NOT_CHOSEN, families.notChosen(choice))), 1);
        }
        return chosen.get(0).equals(named) ? asWritten : varied(written, new Variation(written, procedure, chosen.get(0)));
    }

    private Reading varied(CheckedFile written, Variation variation) {
        Checked alone = services.check(List.of(written.path()), variation.text());
        Reading reading = alone.hasErrors() ? new Reading.Refused(alone.remarks(), 1)
                : together(written, alone.files().get(0), files -> services.check(files, variation.text()));
        if (reading instanceof Reading.Ready ready) {
            return new Reading.Ready(ready.plan(), ready.text(), variation.asWritten(ready.remarks()));
        }
        return new Reading.Refused(variation.asWritten(((Reading.Refused) reading).remarks()), 1);
    }

    /**
     * Checks a procedure once more, with the files that it needs, and compiles it.
     *
     * @param written the file as it is written, which is what is kept
     * @param sound   the file as it was read, without errors
     * @param check   what checks files
     */
    private static Reading together(CheckedFile written, CheckedFile sound, Function<List<Path>, Checked> check) {
        List<Path> wanted = new ArrayList<>(List.of(written.path()));
        wanted.addAll(UsedFiles.of(sound.content().getProcedures().get(0)));
        Checked all = check.apply(wanted);
        Optional<Procedure> procedure = own(all, written.path()).flatMap(f -> f.content().getProcedures().stream().findFirst());
        if (all.hasErrors() || procedure.isEmpty()) {
            return new Reading.Refused(all.remarks(), procedure.isPresent() ? 1 : 0);
        }
        return new Reading.Ready(PlanCompiler.compile(procedure.get()), text(written, all), all.remarks());
    }

    private static Optional<CheckedFile> own(Checked checked, Path file) {
        return checked.files().stream().filter(f -> f.path().equals(file.toAbsolutePath().normalize())).findFirst();
    }

    /**
     * What can be told of what the procedures of a file prove. Errors in the files that they refer to count as their own. Where their parts
     * stand in the text is known to a {@link org.benchwright.language.editing.FolderSession} only.
     *
     * @param file a procedure file
     * @return its procedures, ready to be proved, or the errors that stand in the way
     */
    public Telling telling(Path file) {
        Checked alone = services.check(List.of(file));
        List<Remark> errors = inTheWay(alone);
        if (!errors.isEmpty()) {
            return new Telling.NotYet(errors);
        }
        Set<Path> all = new LinkedHashSet<>(List.of(file.toAbsolutePath().normalize()));
        alone.procedures().forEach(procedure -> all.addAll(UsedFiles.of(procedure)));
        Checked together = services.check(List.copyOf(all));
        errors = inTheWay(together);
        List<Procedure> procedures = together.files().stream().filter(each -> each.path().equals(file.toAbsolutePath().normalize()))
                .flatMap(each -> each.content().getProcedures().stream()).toList();
        return errors.isEmpty() ? new Telling.Told(procedures.stream().map(each -> new Provable(PlanCompiler.compile(each), Map.of())).toList())
                : new Telling.NotYet(errors);
    }

    private static List<Remark> inTheWay(Checked checked) {
        return checked.remarks().stream().filter(Provables::standsInTheWay).toList();
    }

    private static String text(CheckedFile own, Checked all) {
        return ProcedureText.of(new SourceText(own.path(), own.text()), all.files().stream().map(f -> new SourceText(f.path(), f.text())).toList());
    }
}
