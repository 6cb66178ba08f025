package org.benchwright.present;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.report.Page;

/**
 * The record of a test as a story.
 *
 * @param row    which test
 * @param reason why it ended so; empty while it is open
 * @param proved what its soaks proved, a sentence or two for each; empty without one
 * @param story  everything that happened, in order
 * @param sealed true once it is over and signed
 * @param predecessor the test of this unit before, if there is one
 * @param standing where it stands since its seal; empty before
 * @param courses the course of each soak, state and conditions, with the words that say what may be read off it
 * @param out    true if its unit is out there: it may come back, or it is to be told whether its fault was found
 */
public record RecordSheet(RecordRow row, String reason, List<String> proved, List<TimelineLine> story, boolean sealed,
        Optional<String> predecessor, Optional<RecordStanding> standing, List<Page.Section> courses, boolean out) {
    public RecordSheet {
        proved = List.copyOf(proved);
        story = List.copyOf(story);
        courses = List.copyOf(courses);
        Objects.requireNonNull(predecessor);
        Objects.requireNonNull(standing);
    }
}
