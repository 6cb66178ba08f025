package org.benchwright.language.internal.proof;

import java.util.Map;
import java.util.Optional;

import org.benchwright.language.proof.FlowWay;

/**
 * One way out of a place.
 *
 * @param kind     what leads there
 * @param check    the id of the check, question or event; empty where all is done
 * @param words    it in words
 * @param lead     where it leads
 * @param switched what the supply was switched to last on the way through the place; empty if it was not
 * @param answered answers given on the way that hold for the whole test
 * @param begun    whether anything of the place was carried out
 */
record WayOut(FlowWay.Kind kind, String check, String words, Lead lead, Optional<Boolean> switched, Map<String, Boolean> answered,
        boolean begun) {
    WayOut {
        answered = Map.copyOf(answered);
    }
}
