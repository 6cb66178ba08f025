package org.benchwright.present;

import org.benchwright.engine.Demand;

/** What kind of answer is asked, for a face that lays out its entry field by it. */
public enum EntryKind {
    /** A hazard is read and understood. */
    UNDERSTAND,
    /** Yes or no, perhaps with a text behind it. */
    DECIDE,
    /** Something is done, then confirmed. */
    DO,
    /** One key at the very instant. */
    MARK,
    /** As expected, not as expected, or nobody looked. */
    SEE,
    /** A number or a text. */
    WRITE,
    /** A password or a PIN, which nobody sees. */
    SECRET,
    /** The name of a file. */
    FILE,
    /** Several lines. */
    LINES,
    /** Only time answers. */
    TIME,
    /** Nothing is asked any more. */
    NOTHING;

    static EntryKind of(Demand demand) {
        if (demand instanceof Demand.AcknowledgeHazard) {
            return UNDERSTAND;
        } else if (demand instanceof Demand.PressMark) {
            return MARK;
        } else if (demand instanceof Demand.Switch || demand instanceof Demand.Apply) {
            return DO;
        } else if (demand instanceof Demand.AnswerExpectation || demand instanceof Demand.Look) {
            return SEE;
        } else if (demand instanceof Demand.AttachFile) {
            return FILE;
        } else if (demand instanceof Demand.EnterFaultLog) {
            return LINES;
        } else if (demand instanceof Demand.AwaitTone || demand instanceof Demand.AwaitTime) {
            return TIME;
        } else if (demand instanceof Demand.Nothing) {
            return NOTHING;
        }
        return decides(demand) ? DECIDE : WRITE;
    }

    private static boolean decides(Demand demand) {
        return demand instanceof Demand.TellPower || demand instanceof Demand.ConfirmStatement || demand instanceof Demand.ConfirmItem
                || demand instanceof Demand.Release
                || demand instanceof Demand.AnswerPrecondition p && p.precondition().reading().isEmpty();
    }
}
