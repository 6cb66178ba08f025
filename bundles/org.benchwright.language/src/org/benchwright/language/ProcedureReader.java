package org.benchwright.language;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.internal.ProcedureText;
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
     * Reads, checks and compiles the procedure of a file. Errors in the families that it refers to, in whatever file, count as its own.
     *
     * @param file a procedure file that holds one procedure
     * @return its plan, or why there is none
     */
    public Reading read(Path file) {
        List<Path> wanted = List.of(file);
        Checked alone = services.check(wanted);
        if (alone.hasErrors() || alone.procedures().size() != 1) {
            return new Reading.Refused(alone.remarks(), alone.procedures().size());
        }
        List<Path> withFamilies = new ArrayList<>(wanted);
        withFamilies.addAll(UsedFiles.of(alone.procedures().get(0)));
        Checked all = services.check(withFamilies);
        Optional<Procedure> procedure = all.files().stream().filter(f -> f.path().equals(file.toAbsolutePath().normalize()))
                .flatMap(f -> f.content().getProcedures().stream()).findFirst();
        if (all.hasErrors() || procedure.isEmpty()) {
            return new Reading.Refused(all.remarks(), procedure.isPresent() ? 1 : 0);
        }
        return new Reading.Ready(PlanCompiler.compile(procedure.get()), text(all, file), all.remarks());
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
        return errors.isEmpty() ? new Telling.Told(procedures.stream().map(each -> new Provable(PlanCompiler.compile(each), Map.of())).toList()) : new Telling.NotYet(errors);
    }

    private static List<Remark> inTheWay(Checked checked) {
        return checked.remarks().stream().filter(Provables::standsInTheWay).toList();
    }

    private static String text(Checked all, Path file) {
        Path own = file.toAbsolutePath().normalize();
        List<SourceText> texts = all.files().stream().map(f -> new SourceText(f.path(), f.text())).toList();
        return ProcedureText.of(texts.stream().filter(f -> f.path().equals(own)).findFirst().orElseThrow(), texts);
    }
}
