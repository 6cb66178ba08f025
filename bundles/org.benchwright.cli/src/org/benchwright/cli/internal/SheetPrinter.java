package org.benchwright.cli.internal;

import java.util.List;

import org.benchwright.core.SheetTable;

/**
 * Prints what has a title, sentences and tables.
 *
 * @param screen   where
 * @param moreRows says how many rows of a table are not shown, and where all of them are
 */
record SheetPrinter(Screen screen, Message moreRows) {

    /** Prints one subject, behind an empty line. */
    void print(String title, List<String> sentences, List<SheetTable> tables) {
        screen.line("");
        screen.line(title);
        sentences.forEach(this::sentence);
        for (SheetTable table : tables) {
            TextTable text = new TextTable(table, screen.width());
            text.lines().forEach(screen::line);
            if (text.leftOut() > 0) {
                screen.line("  " + moreRows.text(text.leftOut()));
            }
        }
    }

    private void sentence(String words) {
        Wrap.lines(words, screen.width(), "  ", "  ").forEach(screen::line);
    }
}
