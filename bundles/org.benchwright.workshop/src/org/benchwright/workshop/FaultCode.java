package org.benchwright.workshop;

import java.time.Instant;
import java.util.List;

/**
 * A code that stood in fault logs of a family.
 *
 * @param code   as the units wrote it
 * @param name   the family's name, as procedures refer to it
 * @param family the family, by its title
 * @param known  whether the family's notes told it when it was last seen
 * @param first  when it was first entered
 * @param last   when it was last entered
 * @param tests  the tests in which it was entered, in the order in which they were opened; rehearsals are none
 * @param beside what stood beside it, each once, in the order in which it was entered
 */
public record FaultCode(String code, String name, String family, boolean known, Instant first, Instant last, List<String> tests, List<String> beside) {
    public FaultCode {
        tests = List.copyOf(tests);
        beside = List.copyOf(beside);
    }
}
