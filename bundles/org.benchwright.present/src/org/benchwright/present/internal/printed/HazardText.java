package org.benchwright.present.internal.printed;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.benchwright.core.PrintedText.Hazard;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.plan.Plan;

/** Hazards as the cards show them: danger in full each time, the others in full once and as a reminder after that. */
final class HazardText {

    private final Plan plan;
    private final Set<String> shown = new HashSet<>();

    HazardText(Plan plan) {
        this.plan = plan;
    }

    /** Those of one step or soak. */
    List<Part> before(List<String> names) {
        return names.stream().flatMap(name -> plan.hazard(name).stream()).map(hazard -> {
            boolean whole = hazard.signal() == SignalWord.DANGER || shown.add(hazard.name());
            return whole ? inFull(hazard) : reminder(hazard, "");
        }).toList();
    }

    private static Part inFull(org.benchwright.engine.plan.Hazard hazard) {
        return new Hazard(hazard.signal(), word(hazard), List.of(hazard.what(), PrintedWords.HAZARD_CAN.text(hazard.can()),
                PrintedWords.HAZARD_SO.text(hazard.so())), "");
    }

    /** Its signal word, and what is dangerous. */
    static Part reminder(org.benchwright.engine.plan.Hazard hazard, String about) {
        return new Hazard(hazard.signal(), word(hazard), List.of(hazard.what()), about);
    }

    private static String word(org.benchwright.engine.plan.Hazard hazard) {
        return hazard.signal().word().toUpperCase(Locale.ROOT);
    }
}
