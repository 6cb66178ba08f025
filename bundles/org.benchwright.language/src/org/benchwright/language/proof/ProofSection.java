package org.benchwright.language.proof;

import java.util.List;
import java.util.Objects;

import org.benchwright.core.Plot;
import org.benchwright.core.SheetTable;

/**
 * One subject of what a procedure proves, for people.
 *
 * @param subject     what it is about
 * @param title       its title
 * @param sentences   what there is to say, the most important first
 * @param assumptions what the numbers rest on
 * @param tables      numbers in rows
 * @param plots       to be drawn
 */
public record ProofSection(Subject subject, String title, List<String> sentences, List<String> assumptions, List<SheetTable> tables,
        List<Plot> plots) {

    /** Subjects, in the order in which they are shown. */
    public enum Subject {
        /** Paths through the procedure. */
        FLOW,
        /** Bench and attended time. */
        TIMES,
        /** Faults and what reveals them. */
        FAULTS,
        /** Risks of measurements. */
        RISKS,
        /** What soaks detect. */
        SOAK
    }

    public ProofSection {
        Objects.requireNonNull(subject);
        sentences = List.copyOf(sentences);
        assumptions = List.copyOf(assumptions);
        tables = List.copyOf(tables);
        plots = List.copyOf(plots);
    }
}
