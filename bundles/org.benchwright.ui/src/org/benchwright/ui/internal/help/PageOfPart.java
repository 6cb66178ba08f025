package org.benchwright.ui.internal.help;

import java.util.Map;

import org.benchwright.present.HelpPage;
import org.benchwright.ui.Ids;

/** Which page of the manual is about which part of the window. */
public final class PageOfPart {

    private static final Map<String, HelpPage> PAGES = Map.ofEntries(
            Map.entry(Ids.PROCEDURES_VIEW, HelpPage.TEST_ENGINEER), Map.entry(Ids.CONTENTS_VIEW, HelpPage.LANGUAGE),
            Map.entry(Ids.REMARKS_VIEW, HelpPage.LANGUAGE), Map.entry(Ids.PRINTED_VIEW, HelpPage.TEST_ENGINEER),
            Map.entry(Ids.FAULT_CODES_VIEW, HelpPage.TEST_ENGINEER), Map.entry(Ids.PROOF_VIEW, HelpPage.WHAT_IT_PROVES),
            Map.entry(Ids.REVISIONS_VIEW, HelpPage.TEST_ENGINEER),
            Map.entry(Ids.UNITS_VIEW, HelpPage.TECHNICIAN), Map.entry(Ids.CARD_VIEW, HelpPage.TECHNICIAN),
            Map.entry(Ids.RECEIVED_VIEW, HelpPage.TECHNICIAN), Map.entry(Ids.SO_FAR_VIEW, HelpPage.TECHNICIAN),
            Map.entry(Ids.ROUNDS_VIEW, HelpPage.TECHNICIAN), Map.entry(Ids.INSTRUMENTS_VIEW, HelpPage.BENCH_OWNER),
            Map.entry(Ids.FIGURES_VIEW, HelpPage.BENCH_OWNER), Map.entry(Ids.RECORDS_VIEW, HelpPage.AUDITOR),
            Map.entry(Ids.SHEET_VIEW, HelpPage.AUDITOR), Map.entry(Ids.DEPARTURES_VIEW, HelpPage.AUDITOR),
            Map.entry(Ids.NONCONFORMITIES_VIEW, HelpPage.AUDITOR), Map.entry(Ids.CHECK_VIEW, HelpPage.THREATS),
            Map.entry(Ids.PEOPLE_VIEW, HelpPage.TEST_ENGINEER));

    private PageOfPart() {
    }

    /** The page about a view by its id; what there is, where none is about it alone. */
    public static HelpPage of(String view) {
        return PAGES.getOrDefault(view, HelpPage.README);
    }
}
