package org.benchwright.present;

import java.util.List;

/**
 * The record of a test as a story.
 *
 * @param row    which test
 * @param reason why it ended so; empty while it is open
 * @param proved what its soaks proved, a sentence or two for each; empty without one
 * @param story  everything that happened, in order
 * @param sealed true once it is over and signed
 */
public record RecordSheet(RecordRow row, String reason, List<String> proved, List<TimelineLine> story, boolean sealed) {
    public RecordSheet {
        proved = List.copyOf(proved);
        story = List.copyOf(story);
    }
}
