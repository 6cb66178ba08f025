package org.benchwright.ui;

/** Perspectives and views by their ids, as in plugin.xml. */
public final class Ids {

    /** The page that the first start shows. */
    public static final String START = "org.benchwright.ui.start";
    /** Where procedures are written. */
    public static final String AUTHOR = "org.benchwright.ui.author";
    /** Where units are tested. */
    public static final String BENCH = "org.benchwright.ui.bench";
    /** Where records are read and checked. */
    public static final String AUDIT = "org.benchwright.ui.audit";

    /** The start page's only view. */
    public static final String WELCOME_VIEW = "org.benchwright.ui.welcome";
    /** The files of the procedures' folder. */
    public static final String PROCEDURES_VIEW = "org.benchwright.ui.procedures";
    /** Contents of the text that is being written. */
    public static final String CONTENTS_VIEW = "org.benchwright.ui.contents";
    /** Remarks on the whole folder. */
    public static final String REMARKS_VIEW = "org.benchwright.ui.remarks";
    /** Fault codes. */
    public static final String FAULT_CODES_VIEW = "org.benchwright.ui.faultCodes";
    /** As printed. */
    public static final String PRINTED_VIEW = "org.benchwright.ui.printed";
    /** A page of the manual, such as what a remark means. */
    public static final String PAGE_VIEW = "org.benchwright.ui.remarkPage";
    /** What it proves. */
    public static final String PROOF_VIEW = "org.benchwright.ui.proof";
    /** Revisions. */
    public static final String REVISIONS_VIEW = "org.benchwright.ui.revisions";
    /** Units on the bench. */
    public static final String UNITS_VIEW = "org.benchwright.ui.units";
    /** Step card. */
    public static final String CARD_VIEW = "org.benchwright.ui.card";
    /** Received: the units in the house. */
    public static final String RECEIVED_VIEW = "org.benchwright.ui.received";
    /** Instruments. */
    public static final String INSTRUMENTS_VIEW = "org.benchwright.ui.instruments";
    /** So far. */
    public static final String SO_FAR_VIEW = "org.benchwright.ui.sofar";
    /** Rounds. */
    public static final String ROUNDS_VIEW = "org.benchwright.ui.rounds";
    /** Records. */
    public static final String RECORDS_VIEW = "org.benchwright.ui.records";
    /** Record sheet. */
    public static final String SHEET_VIEW = "org.benchwright.ui.sheet";
    /** Departures. */
    public static final String DEPARTURES_VIEW = "org.benchwright.ui.departures";
    /** Nonconformities. */
    public static final String NONCONFORMITIES_VIEW = "org.benchwright.ui.nonconformities";
    /** Ledger check. */
    public static final String CHECK_VIEW = "org.benchwright.ui.check";
    /** Figures. */
    public static final String FIGURES_VIEW = "org.benchwright.ui.figures";
    /** People. */
    public static final String PEOPLE_VIEW = "org.benchwright.ui.people";

    private Ids() {
    }
}
