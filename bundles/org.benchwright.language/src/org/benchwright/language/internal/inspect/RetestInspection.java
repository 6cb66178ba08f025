package org.benchwright.language.internal.inspect;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Block;
import org.benchwright.model.Families;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Retest;

/** A retest carries out every stage that it says it repeats; what proves the bench does not wait for itself. */
final class RetestInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        if (procedure.getBenchProof() != null && procedure.getBenchNeed() != null) {
            remarks.on(procedure.getBenchNeed(), RemarkCode.PROVED_BY_ITSELF);
        }
        retest(procedure, remarks);
    }

    private static void retest(Procedure procedure, Remarks remarks) {
        Retest retest = procedure.getRetest();
        Optional<Procedure> repeated = retest == null ? Optional.empty() : Written.thing(retest.getProcedure());
        if (repeated.isEmpty()) {
            return;
        }
        if (sameProcedure(repeated.get(), procedure)) {
            remarks.on(retest, Literals.RETEST__PROCEDURE, RemarkCode.RETEST_OF_ITSELF);
            return;
        }
        if (!sameLine(procedure, repeated.get())) {
            remarks.on(retest, Literals.RETEST__PROCEDURE, RemarkCode.RETEST_OF_OTHER_FAMILY, repeated.get().getName());
        }
        List<Block> repeats = retest.getRepeats();
        for (int i = 0; i < repeats.size(); i++) {
            Optional<Block> block = Written.thing(repeats.get(i));
            if (block.isPresent() && procedure.getBlocks().stream().noneMatch(own -> Procedures.name(own).equals(Procedures.name(block.get())))) {
                remarks.on(retest, Literals.RETEST__REPEATS, i, RemarkCode.RETEST_STAGE_MISSING, Procedures.name(block.get()).orElse(""));
            }
        }
    }

    private static boolean sameProcedure(Procedure one, Procedure other) {
        return one == other || one.getName() != null && one.getName().equals(other.getName());
    }

    private static boolean sameLine(Procedure retest, Procedure repeated) {
        return Written.thing(retest.getFamily()).flatMap(own -> Written.thing(repeated.getFamily())
                .map(other -> Families.isLike(own, other) || Families.isLike(other, own))).orElse(true);
    }
}
