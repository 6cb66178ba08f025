package org.benchwright.language.internal.fix;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.model.BenchNeed;
import org.benchwright.model.Claim;
import org.benchwright.model.Retest;
import org.benchwright.model.Step;
import org.eclipse.xtext.scoping.IScopeProvider;

/** For each code, the ways in which it could be mended. */
public final class Candidates {

    private final Map<RemarkCode, Function<Spot, List<Fix>>> byCode = new EnumMap<>(RemarkCode.class);

    /**
     * @param scopes   tells which names are visible where
     * @param approved tells which revisions are used up
     */
    public Candidates(IScopeProvider scopes, ApprovedRevisions approved) {
        NameFixes names = new NameFixes(scopes);
        List.of(RemarkCode.UNKNOWN_FAMILY, RemarkCode.UNKNOWN_PROCEDURE, RemarkCode.UNKNOWN_LAMP, RemarkCode.UNKNOWN_DISPLAY,
                RemarkCode.UNKNOWN_MODE, RemarkCode.UNKNOWN_PROTECTED_ITEM, RemarkCode.UNKNOWN_LOAD_ITEM, RemarkCode.UNKNOWN_FAULT,
                RemarkCode.UNKNOWN_HAZARD, RemarkCode.UNKNOWN_INSTRUMENT, RemarkCode.UNKNOWN_MARK, RemarkCode.UNKNOWN_STEP_OR_STAGE,
                RemarkCode.UNKNOWN_VALUE, RemarkCode.UNKNOWN_SHARED_STAGE, RemarkCode.UNKNOWN_PARAMETER, RemarkCode.UNKNOWN_OPTION)
                .forEach(code -> byCode.put(code, names::alike));
        byCode.put(RemarkCode.MISSING_FAMILY, names::families);
        byCode.put(RemarkCode.LISTED_TWICE, NameFixes::listedTwice);
        List.of(RemarkCode.UNUSED_HAZARD, RemarkCode.UNUSED_INSTRUMENT, RemarkCode.UNUSED_MARK)
                .forEach(code -> byCode.put(code, NameFixes::unused));
        byCode.put(RemarkCode.APPROVED_CHANGED, spot -> ClauseFixes.nextRevision(spot, approved));
        amounts();
        clauses();
        declarations();
        safety();
    }

    private void amounts() {
        byCode.put(RemarkCode.LIMITS_INVERTED, AmountFixes::swapLimits);
        byCode.put(RemarkCode.COUNT_NOT_POSITIVE, spot -> AmountFixes.by(spot, "1"));
        byCode.put(RemarkCode.MEAN_OF_ONE, spot -> AmountFixes.by(spot, "2"));
        byCode.put(RemarkCode.COVERAGE_NOT_POSITIVE, AmountFixes::coverage);
        byCode.put(RemarkCode.UNCERTAINTY_NEGATIVE, AmountFixes::positiveUncertainty);
        byCode.put(RemarkCode.OFFSET_UNIT_IN_TOLERANCE, AmountFixes::kelvin);
        byCode.put(RemarkCode.TOLERANCE_EXCLUDES_NOMINAL, AmountFixes::negativeLower);
        byCode.put(RemarkCode.DEADLINE_TOO_SHORT_FOR_HAND, spot -> AmountFixes.amountBy(spot, "1 s"));
        byCode.put(RemarkCode.COLOUR_NOT_SAID, AmountFixes::colours);
        byCode.put(RemarkCode.COLOUR_NOT_OF_LAMP, AmountFixes::colours);
        byCode.put(RemarkCode.LOOK_LONGER_THAN_SOAK, AmountFixes::asLongAsSoak);
        byCode.put(RemarkCode.STEPS_LONGER_THAN_STAGE, AmountFixes::longerStage);
        byCode.put(RemarkCode.CLAIM_UNSUPPORTED, AmountFixes::claimLess);
        byCode.put(RemarkCode.DEADLINE_LONGER_THAN_STAGE, AmountFixes::stageAsLongAsDeadline);
        byCode.put(RemarkCode.LOOK_TOLERANCE_TOO_LARGE, AmountFixes::lookTolerance);
        byCode.put(RemarkCode.NO_SUCH_LAMP_IN_GROUP, AmountFixes::lampNumber);
        byCode.put(RemarkCode.UNKNOWN_UNIT, AmountFixes::unit);
        byCode.put(RemarkCode.LEVEL_OUT_OF_RANGE, spot -> AmountFixes.amountBy(spot, "90 %"));
    }

    private void clauses() {
        byCode.put(RemarkCode.EXPECTATION_WITHOUT_TIME, ClauseFixes::time);
        byCode.put(RemarkCode.MARK_NOT_SAID, ClauseFixes::mark);
        byCode.put(RemarkCode.MARK_NOT_BEFORE, ClauseFixes::earlierMark);
        byCode.put(RemarkCode.LIMITS_WITHOUT_READING, ClauseFixes::reading);
        byCode.put(RemarkCode.MISSING_REVISION, ClauseFixes::revision);
        byCode.put(RemarkCode.UNDECIDED_WITHOUT_OUTCOME, ClauseFixes::whenUndecided);
        byCode.put(RemarkCode.NEVER_UNDECIDED, ClauseFixes::bothWays);
        byCode.put(RemarkCode.CONCLUSION_WITHOUT_REASON, ClauseFixes::reason);
        byCode.put(RemarkCode.NO_OUTCOME, ClauseFixes::otherwise);
        byCode.put(RemarkCode.STEP_WITHOUT_CHECK, ClauseFixes::entry);
        byCode.put(RemarkCode.ENDLESS_REPEAT, ClauseFixes::bound);
        byCode.put(RemarkCode.NO_CONCLUSION, ClauseFixes::conclusion);
        byCode.put(RemarkCode.MISSING_MAKE_SAFE, ClauseFixes::makeSafe);
        byCode.put(RemarkCode.STAGE_UNREACHABLE, ClauseFixes::notOnDemand);
        byCode.put(RemarkCode.STATEMENT_UNREACHABLE, ClauseFixes::removeStatement);
        byCode.put(RemarkCode.SOAK_NOT_WITNESSED, ClauseFixes::witnessed);
        byCode.put(RemarkCode.SOAK_UNOBSERVED, ClauseFixes::look);
        byCode.put(RemarkCode.SOAK_NEEDS_WATCH, ClauseFixes::watch);
        byCode.put(RemarkCode.STAGE_WITHOUT_STEPS, ClauseFixes::step);
        byCode.put(RemarkCode.UNLESS_WITHOUT_WATCH, ClauseFixes::notUnless);
        byCode.put(RemarkCode.WATCH_INCOMPLETE, ClauseFixes::stopAfter);
    }

    private void declarations() {
        byCode.put(RemarkCode.DUPLICATE_NAME, DeclarationFixes::otherName);
        byCode.put(RemarkCode.CYCLIC_LIKE, DeclarationFixes::notLike);
        byCode.put(RemarkCode.STOP_NOT_DECLARED, DeclarationFixes::stop);
        byCode.put(RemarkCode.ARGUMENT_MISSING, DeclarationFixes::arguments);
        byCode.put(RemarkCode.INSTRUMENT_NOT_SAID, DeclarationFixes::instrument);
        byCode.put(RemarkCode.SOAK_KEEPS_NOTHING, DeclarationFixes::keep);
        byCode.put(RemarkCode.CLAIM_WITHOUT_SOAK, spot -> DeclarationFixes.without(spot, Claim.class));
        byCode.put(RemarkCode.PROVED_BY_ITSELF, spot -> DeclarationFixes.without(spot, BenchNeed.class));
        byCode.put(RemarkCode.RETEST_OF_ITSELF, spot -> DeclarationFixes.without(spot, Retest.class));
        byCode.put(RemarkCode.STEP_UNREACHABLE, spot -> DeclarationFixes.without(spot, Step.class));
    }

    private void safety() {
        byCode.put(RemarkCode.STRAP_WHILE_LIVE, SafetyFixes::noStrap);
        byCode.put(RemarkCode.MAKE_SAFE_NEEDS_RELEASE, SafetyFixes::releaseInstead);
        byCode.put(RemarkCode.CONCLUDED_IN_MAKE_SAFE, ClauseFixes::removeStatement);
        byCode.put(RemarkCode.POINT_TWICE, WatchFixes::onlyOnce);
        byCode.put(RemarkCode.POINT_BITS, WatchFixes::bits);
        byCode.put(RemarkCode.POINT_VALUE, WatchFixes::value);
        byCode.put(RemarkCode.HAZARD_NOT_SHOWN, SafetyFixes::showHazard);
        byCode.put(RemarkCode.ENERGISED_WHILE_FITTING, SafetyFixes::isolateFirst);
        byCode.put(RemarkCode.ENERGISED_AT_END, SafetyFixes::isolateInMakeSafe);
        byCode.put(RemarkCode.PROTECTED_ITEM_ERASED, SafetyFixes::releaseFirst);
        byCode.put(RemarkCode.PROTECTED_ITEM_REPLACED, SafetyFixes::releaseFirst);
        byCode.put(RemarkCode.PROTECTED_ITEM_NOT_NAMED, SafetyFixes::spare);
        byCode.put(RemarkCode.ERASED_BEFORE_RECORDED, SafetyFixes::recordFirst);
        byCode.put(RemarkCode.CHOSEN_AND_SPARED, SafetyFixes::notSpared);
    }

    /**
     * The ways to mend what a remark is about; none of them tried yet.
     *
     * @param file   the file, parsed
     * @param remark a remark on its present text
     */
    public List<Fix> of(ParsedFile file, Remark remark) {
        Function<Spot, List<Fix>> fixes = byCode.getOrDefault(remark.code(), none -> List.of());
        return Spot.of(file, remark).map(fixes).orElse(List.of());
    }

    /** The codes for which there are any. */
    public Set<RemarkCode> codes() {
        return Set.copyOf(byCode.keySet());
    }
}
