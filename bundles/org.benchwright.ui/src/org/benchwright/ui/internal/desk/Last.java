package org.benchwright.ui.internal.desk;

import java.util.List;
import java.util.Optional;

import org.benchwright.present.FaultExplanation;

/**
 * What came of the last thing that was done on a test.
 *
 * @param event        number of the event recorded; 0 if none was
 * @param news         decisions with their margins, repeats, moves, departures
 * @param explanations fault codes in plain words
 * @param refused      why nothing was recorded, and what to do
 * @param tone         true if a tone has sounded by it
 */
public record Last(long event, List<String> news, List<FaultExplanation> explanations, Optional<String> refused, boolean tone) {

    /** Nothing was done yet. */
    public static final Last NOTHING = new Last(0, List.of(), List.of(), Optional.empty(), false);

    public Last {
        news = List.copyOf(news);
        explanations = List.copyOf(explanations);
    }

    static Last refused(String why) {
        return new Last(0, List.of(), List.of(), Optional.of(why), false);
    }

    static Last said(List<String> news) {
        return new Last(0, news, List.of(), Optional.empty(), false);
    }
}
