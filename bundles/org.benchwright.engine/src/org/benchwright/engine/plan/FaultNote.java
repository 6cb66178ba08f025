package org.benchwright.engine.plan;

import java.util.List;

/**
 * What a terse code in the unit's fault log means.
 *
 * @param code  the code as the unit writes it
 * @param title short meaning
 * @param shows indications that come with it
 * @param means what happened, in plain words; may be empty
 * @param often what is often the cause; may be empty
 * @param next  the next move; may be empty
 */
public record FaultNote(String code, String title, List<Signal> shows, String means, String often, String next) {
    public FaultNote {
        shows = List.copyOf(shows);
    }
}
