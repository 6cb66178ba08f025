package org.benchwright.language;

import java.util.Locale;

import org.benchwright.core.Severity;
import org.benchwright.core.Texts;
import org.benchwright.language.internal.InternalText;

/**
 * Everything that the language can remark on, each with a word that never changes: scripts, quick fixes and approvals
 * refer to it.
 */
public enum RemarkCode {
    /** The file could not be read. */
    CANNOT_READ(Severity.ERROR),
    /** The file is larger than any procedure. */
    FILE_TOO_LARGE(Severity.ERROR),
    /** The file is not text in UTF-8. */
    NOT_UTF_8(Severity.ERROR),
    /** Something does not fit the grammar. */
    SYNTAX(Severity.ERROR),
    /** Parentheses or outcomes within each other without end. */
    NESTED_TOO_DEEP(Severity.ERROR),

    /** No family of that name in the folder, nor in one from which the file imports. */
    UNKNOWN_FAMILY(Severity.ERROR),
    /** No procedure of that name in the folder, nor in one from which the file imports. */
    UNKNOWN_PROCEDURE(Severity.ERROR),
    /** No lamp of that name in the family. */
    UNKNOWN_LAMP(Severity.ERROR),
    /** No display of that name in the family. */
    UNKNOWN_DISPLAY(Severity.ERROR),
    /** No mode of that name in the family. */
    UNKNOWN_MODE(Severity.ERROR),
    /** Nothing of that name is kept by the family. */
    UNKNOWN_PROTECTED_ITEM(Severity.ERROR),
    /** Nothing of that name can be loaded into the family. */
    UNKNOWN_LOAD_ITEM(Severity.ERROR),
    /** No fault note of that name in the family. */
    UNKNOWN_FAULT(Severity.ERROR),
    /** No hazard of that name in the procedure. */
    UNKNOWN_HAZARD(Severity.ERROR),
    /** No instrument of that name in the procedure. */
    UNKNOWN_INSTRUMENT(Severity.ERROR),
    /** No mark of that name in the procedure. */
    UNKNOWN_MARK(Severity.ERROR),
    /** No step, stage or soak of that name that one could go to. */
    UNKNOWN_STEP_OR_STAGE(Severity.ERROR),
    /** No value of that name in the grid. */
    UNKNOWN_VALUE(Severity.ERROR),
    /** No shared stage of that name in the folder, nor in one from which the file imports. */
    UNKNOWN_SHARED_STAGE(Severity.ERROR),
    /** The shared stage has no parameter of that name. */
    UNKNOWN_PARAMETER(Severity.ERROR),
    /** The family has no option of that name. */
    UNKNOWN_OPTION(Severity.ERROR),
    /** An import that leads to no family or procedure file. */
    IMPORT_NOT_FOUND(Severity.ERROR),
    /** A shared stage is carried out without a value for one of its parameters. */
    ARGUMENT_MISSING(Severity.ERROR),
    /** A parameter that nothing in its shared stage uses. */
    UNUSED_PARAMETER(Severity.WARNING),
    /** A shared stage that is for another family. */
    SHARED_FOR_OTHER_FAMILY(Severity.ERROR),
    /** Nothing of that name. */
    UNKNOWN_NAME(Severity.ERROR),
    /** The same name twice in one list. */
    LISTED_TWICE(Severity.ERROR),
    /** Two things of one kind have the same name. */
    DUPLICATE_NAME(Severity.ERROR),
    /** Two names differ in letter case only. */
    CASE_ONLY_DIFFERENCE(Severity.WARNING),
    /** A family is like itself in the end. */
    CYCLIC_LIKE(Severity.ERROR),
    /** A mask of serial numbers that none can fit. */
    BAD_SERIAL_MASK(Severity.ERROR),
    /** A group of more lamps than any panel has. */
    GROUP_TOO_LARGE(Severity.ERROR),
    /** A count that has to be 1 or more is not. */
    COUNT_NOT_POSITIVE(Severity.ERROR),
    /** A word that is no unit of measure. */
    UNKNOWN_UNIT(Severity.ERROR),
    /** A unit that measures something else. */
    WRONG_DIMENSION(Severity.ERROR),
    /** A time below a millisecond or beyond a year. */
    DURATION_OUT_OF_RANGE(Severity.ERROR),
    /** A tolerance in a unit whose zero is not nothing. */
    OFFSET_UNIT_IN_TOLERANCE(Severity.ERROR),
    /** A lower limit above the upper one, or a first number above the last. */
    LIMITS_INVERTED(Severity.ERROR),
    /** A tolerance that leaves the nominal value out. */
    TOLERANCE_EXCLUDES_NOMINAL(Severity.ERROR),
    /** A supply of 0, or a percentage of 0. */
    NOMINAL_ZERO(Severity.ERROR),
    /** A colour that the lamp doesn't have. */
    COLOUR_NOT_OF_LAMP(Severity.ERROR),
    /** A lamp of two colours, and none is said. */
    COLOUR_NOT_SAID(Severity.ERROR),
    /** A flash rate that nobody sees flash, or a tolerance that means nothing. */
    FLASH_RATE_OUT_OF_RANGE(Severity.ERROR),
    /** A number that no lamp of the group has. */
    NO_SUCH_LAMP_IN_GROUP(Severity.ERROR),
    /** A text longer than the display. */
    DISPLAY_TEXT_TOO_LONG(Severity.ERROR),
    /** A mode that nothing shows. */
    MODE_NEVER_SHOWN(Severity.WARNING),
    /** An expectation without a time. */
    EXPECTATION_WITHOUT_TIME(Severity.ERROR),
    /** A deadline, and no mark that it counts from. */
    MARK_NOT_SAID(Severity.ERROR),
    /** A mark that is not made before its deadline counts. */
    MARK_NOT_BEFORE(Severity.ERROR),
    /** A deadline that nobody can judge by hand. */
    DEADLINE_TOO_SHORT_FOR_HAND(Severity.WARNING),
    /** A deadline beyond the time of its stage. */
    DEADLINE_LONGER_THAN_STAGE(Severity.WARNING),
    /** Two expectations of which no unit can meet both. */
    EXPECTATIONS_CONTRADICT(Severity.ERROR),
    /** Steps that together take, or wait, longer than their stage may. */
    STEPS_LONGER_THAN_STAGE(Severity.WARNING),
    /** A measurement without limits. */
    LIMITS_NOT_SAID(Severity.ERROR),
    /** Limits where nothing is read. */
    LIMITS_WITHOUT_READING(Severity.ERROR),
    /** A measurement without an instrument. */
    INSTRUMENT_NOT_SAID(Severity.ERROR),
    /** A source used as a meter. */
    INSTRUMENT_ONLY_GIVES(Severity.ERROR),
    /** A meter used as a source. */
    INSTRUMENT_ONLY_READS(Severity.ERROR),
    /** A coverage factor of zero or below. */
    COVERAGE_NOT_POSITIVE(Severity.ERROR),
    /** An uncertainty below zero. */
    UNCERTAINTY_NEGATIVE(Severity.ERROR),
    /** A guarded decision without an uncertainty to guard against. */
    UNCERTAINTY_NOT_SAID(Severity.ERROR),
    /** Limits that the instrument can't reach. */
    LIMITS_BEYOND_INSTRUMENT(Severity.ERROR),
    /** Guard bands that leave nothing to accept. */
    GUARD_BANDS_MEET(Severity.ERROR),
    /** A repeat that never comes. */
    NEVER_UNDECIDED(Severity.ERROR),
    /** An undecided value without an outcome of its own. */
    UNDECIDED_WITHOUT_OUTCOME(Severity.WARNING),
    /** A plain number where a quantity is needed. */
    UNIT_NOT_SAID(Severity.ERROR),
    /** A grid that nobody carries out. */
    GRID_TOO_LARGE(Severity.ERROR),
    /** Values one by one that pass over the last one. */
    RANGE_NOT_REACHED(Severity.ERROR),
    /** A mean of fewer than two readings, or of more than anybody takes. */
    MEAN_OF_ONE(Severity.ERROR),
    /** A derived value that needs one which was not measured on every way there. */
    VALUE_NOT_MEASURED(Severity.ERROR),
    /** The chance of accepting a unit at the limit is larger than the procedure states. */
    RISK_EXCEEDED(Severity.ERROR),
    /** A guard band that leaves a large chance of accepting a unit at the limit. */
    GUARD_BAND_THIN(Severity.WARNING),
    /** Repeats that give a unit at the limit a much larger chance to be accepted. */
    REPEATS_RAISE_RISK(Severity.WARNING),
    /** Something that can fail, and nothing says what follows. */
    NO_OUTCOME(Severity.ERROR),
    /** A failed check that leads to an accepted unit. */
    FAILURE_ACCEPTED(Severity.WARNING),
    /** A precondition that may not be met, and what follows is no conclusion. */
    PRECONDITION_NOT_CONCLUDED(Severity.WARNING),
    /** A check of make safe that could end it, or lead out of it, without anybody's release. */
    MAKE_SAFE_NEEDS_RELEASE(Severity.ERROR),
    /** A conclusion among the statements of make safe. */
    CONCLUDED_IN_MAKE_SAFE(Severity.ERROR),
    /** A rejection or an undecided end without a reason. */
    CONCLUSION_WITHOUT_REASON(Severity.WARNING),
    /** A soak that nothing has to last in. */
    SOAK_KEEPS_NOTHING(Severity.ERROR),
    /** A soak that nobody looks at. */
    SOAK_UNOBSERVED(Severity.ERROR),
    /** A soak with the supply off. */
    SOAK_WHILE_OFF(Severity.ERROR),
    /** Looks or samples further apart than the soak is long, or a gap longer than it. */
    LOOK_LONGER_THAN_SOAK(Severity.ERROR),
    /** A look that may be as late as the next one is due. */
    LOOK_TOLERANCE_TOO_LARGE(Severity.WARNING),
    /** A soak, and the family does not say what a stop looks like. */
    STOP_NOT_DECLARED(Severity.ERROR),
    /** Looks alone at a unit that restarts by itself. */
    SOAK_NEEDS_WATCH(Severity.ERROR),
    /** A soak that does not say that its hours have to be witnessed. */
    SOAK_NOT_WITNESSED(Severity.WARNING),
    /** Looks that a watch makes unnecessary, and there is no watch. */
    UNLESS_WITHOUT_WATCH(Severity.WARNING),
    /** A stop or a gap in a soak that a release is to follow. */
    SOAK_RELEASED(Severity.ERROR),
    /** A level that no evidence reaches, or a stated risk that says nothing: not between 0 % and 100 %. */
    LEVEL_OUT_OF_RANGE(Severity.ERROR),
    /** A claim, and a way to an accepted unit without a soak that supports it. */
    CLAIM_WITHOUT_SOAK(Severity.ERROR),
    /** A claim that the soak is too short for. */
    CLAIM_UNSUPPORTED(Severity.ERROR),
    /** A protected item is erased without a release. */
    PROTECTED_ITEM_ERASED(Severity.ERROR),
    /** A protected item is replaced without a release. */
    PROTECTED_ITEM_REPLACED(Severity.ERROR),
    /** A protected item is not named where others are erased. */
    PROTECTED_ITEM_NOT_NAMED(Severity.WARNING),
    /** A protected item that is lost as soon as the supply is off. */
    PROTECTED_ITEM_KEPT_BY_SUPPLY(Severity.WARNING),
    /** An item is both chosen and spared. */
    CHOSEN_AND_SPARED(Severity.ERROR),
    /** Something is erased before it was recorded. */
    ERASED_BEFORE_RECORDED(Severity.ERROR),
    /** A procedure that applies to no family. */
    MISSING_FAMILY(Severity.ERROR),
    /** It does not follow for which of the families that are like each other a procedure is to be read. */
    FAMILY_NOT_CHOSEN(Severity.ERROR),
    /** A procedure without a revision. */
    MISSING_REVISION(Severity.ERROR),
    /** A revision that was approved with another text. */
    APPROVED_CHANGED(Severity.WARNING),
    /** A procedure that leaves the bench as it is. */
    MISSING_MAKE_SAFE(Severity.ERROR),
    /** A procedure without a stage. */
    NO_STAGE(Severity.ERROR),
    /** A stage without a step. */
    STAGE_WITHOUT_STEPS(Severity.ERROR),
    /** A step in which nothing is asked. */
    STEP_WITHOUT_CHECK(Severity.WARNING),
    /** A text with nothing in it. */
    EMPTY_TEXT(Severity.WARNING),
    /** A hazard that lacks one of its three parts. */
    HAZARD_INCOMPLETE(Severity.ERROR),
    /** The supply is switched on before a hazard was shown. */
    HAZARD_NOT_SHOWN(Severity.ERROR),
    /** A wrist strap is asked for while the supply may be on. */
    STRAP_WHILE_LIVE(Severity.ERROR),
    /** A hazard that is declared and never shown. */
    UNUSED_HAZARD(Severity.WARNING),
    /** An instrument that is declared and never used. */
    UNUSED_INSTRUMENT(Severity.WARNING),
    /** A mark that nothing counts from. */
    UNUSED_MARK(Severity.WARNING),
    /** An address that no unit has. */
    POINT_ADDRESS(Severity.ERROR),
    /** A number of so many bits that there is none of. */
    POINT_BITS(Severity.ERROR),
    /** A value that the point can't read. */
    POINT_VALUE(Severity.ERROR),
    /** A node by an identifier that no server has. */
    POINT_NODE(Severity.ERROR),
    /** A point of another protocol. */
    POINT_OTHER_PROTOCOL(Severity.ERROR),
    /** Two points that take the same registers for different numbers. */
    POINTS_OVERLAP(Severity.ERROR),
    /** A mode, lamp or condition with two points that contradict each other. */
    POINT_TWICE(Severity.ERROR),
    /** Two modes that the same value would tell. */
    POINT_AMBIGUOUS(Severity.ERROR),
    /** An order of registers for a number that has only one. */
    POINT_ORDER(Severity.ERROR),
    /** A condition that is scaled from nothing, or read from a bit. */
    POINT_SCALE(Severity.ERROR),
    /** A watch that can't tell whether the unit is as it must be. */
    WATCH_CANNOT_TELL(Severity.WARNING),
    /** A watch that never says stop. */
    WATCH_INCOMPLETE(Severity.ERROR),
    /** A procedure that proves the bench and needs it proved first. */
    PROVED_BY_ITSELF(Severity.ERROR),
    /** A procedure that is a retest of itself. */
    RETEST_OF_ITSELF(Severity.ERROR),
    /** A retest of a procedure for another family. */
    RETEST_OF_OTHER_FAMILY(Severity.ERROR),
    /** A retest lacks a stage that it says it repeats. */
    RETEST_STAGE_MISSING(Severity.ERROR),
    /** A way that ends with the supply on. */
    ENERGISED_AT_END(Severity.ERROR),
    /** A unit is fitted or removed with the supply on. */
    ENERGISED_WHILE_FITTING(Severity.ERROR),
    /** A way that ends without a conclusion. */
    NO_CONCLUSION(Severity.ERROR),
    /** A stage or a soak that nobody reaches. */
    STAGE_UNREACHABLE(Severity.ERROR),
    /** A step that nobody reaches. */
    STEP_UNREACHABLE(Severity.ERROR),
    /** A statement that nobody reaches. */
    STATEMENT_UNREACHABLE(Severity.ERROR),
    /** Going back without a bound. */
    ENDLESS_REPEAT(Severity.ERROR),
    /** An inspection of ours failed. */
    INSPECTION_FAILED(Severity.ERROR),
    /** More remarks than anybody reads at once. */
    MORE_REMARKS(Severity.INFO);

    private static final Texts TEXTS = Texts.beside(InternalText.class, "messages");

    private final Severity severity;

    RemarkCode(Severity severity) {
        this.severity = severity;
    }

    /**
     * How much it matters.
     *
     * @return the severity of every remark with this code
     */
    public Severity severity() {
        return severity;
    }

    /**
     * The word that stands for it in lists and files.
     *
     * @return for example {@code unknown-lamp}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The page that says more: what it means, an example that earns it, and the same mended.
     *
     * @return its path below the pages of the language, for example {@code docs/remarks/unknown-lamp.md}
     */
    public String page() {
        return "docs/remarks/" + word() + ".md";
    }

    /**
     * Its text with the arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     * @return the text in the language of the machine, or in English where there is none
     */
    public String text(String... arguments) {
        return TEXTS.text(word(), (Object[]) arguments);
    }
}
