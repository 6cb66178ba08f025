package org.benchwright.language;

import java.util.List;

import org.benchwright.engine.plan.Plan;

/** What came of reading a procedure in order to carry it out. */
public sealed interface Reading {

    /**
     * It can be carried out.
     *
     * @param plan    the compiled plan
     * @param text    the procedure's text with the texts of the files that it refers to, as a record keeps it
     * @param remarks warnings and hints; none of them stands in the way
     */
    record Ready(Plan plan, String text, List<Remark> remarks) implements Reading {
        public Ready {
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * It can't be carried out.
     *
     * @param remarks why, at least one of them an error; without one if the file holds no procedure, or several
     * @param found   how many procedures the file holds
     */
    record Refused(List<Remark> remarks, int found) implements Reading {
        public Refused {
            remarks = List.copyOf(remarks);
        }

        /** True if the file could not be read at all. */
        public boolean unreadable() {
            return remarks.stream().anyMatch(r -> r.code() == RemarkCode.CANNOT_READ);
        }
    }
}
