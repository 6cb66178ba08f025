package org.benchwright.language.internal.proof;

import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Severity;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;

/** What can be proved in spite of errors, and where its parts are looked up. */
public final class Provables {

    /**
     * Errors that say something about what a procedure proves, not that it says nothing: its plan is whole, and the analysis shows what
     * they are about.
     */
    private static final Set<RemarkCode> IN_NO_WAY = Set.of(RemarkCode.CLAIM_UNSUPPORTED, RemarkCode.CLAIM_WITHOUT_SOAK, RemarkCode.RISK_EXCEEDED,
            RemarkCode.ENERGISED_AT_END, RemarkCode.ENERGISED_WHILE_FITTING, RemarkCode.STAGE_UNREACHABLE, RemarkCode.STEP_UNREACHABLE,
            RemarkCode.STATEMENT_UNREACHABLE, RemarkCode.HAZARD_NOT_SHOWN, RemarkCode.STRAP_WHILE_LIVE, RemarkCode.SOAK_WHILE_OFF,
            RemarkCode.LOOK_LONGER_THAN_SOAK, RemarkCode.SOAK_NEEDS_WATCH, RemarkCode.ERASED_BEFORE_RECORDED, RemarkCode.GUARD_BANDS_MEET,
            RemarkCode.PROTECTED_ITEM_ERASED, RemarkCode.PROTECTED_ITEM_REPLACED, RemarkCode.ENDLESS_REPEAT,
            RemarkCode.RETEST_STAGE_MISSING, RemarkCode.VALUE_NOT_MEASURED);

    private Provables() {
    }

    /** Whether a remark is an error that stands in the way of saying what a procedure proves. */
    public static boolean standsInTheWay(Remark remark) {
        return remark.severity() == Severity.ERROR && !IN_NO_WAY.contains(remark.code());
    }

    /** The key of a stage, or of a step in it, among a compiled procedure's passages. */
    static String key(Stage stage, Optional<Step> step) {
        return step.map(each -> "step." + each.name()).orElse("stage." + stage.name());
    }
}
