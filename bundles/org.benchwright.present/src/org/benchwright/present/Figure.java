package org.benchwright.present;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.core.SheetTable;

/**
 * One figure: what it says, what it shows and its numbers.
 *
 * @param title     its heading
 * @param sentences what it says, with the number of cases and the confidence; the first alone must not mislead
 * @param plot      what it shows; nothing where there is too little to draw
 * @param tables    its numbers
 */
public record Figure(String title, List<String> sentences, Optional<Plot> plot, List<SheetTable> tables) {

    /** Freezes the lists. */
    public Figure {
        sentences = List.copyOf(sentences);
        tables = List.copyOf(tables);
    }
}
