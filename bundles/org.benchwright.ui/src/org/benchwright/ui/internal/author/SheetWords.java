package org.benchwright.ui.internal.author;

import java.util.List;

import org.benchwright.core.SheetTable;
import org.benchwright.ui.internal.look.Story;

/**
 * A table that is too wide to stand as one, as words: the first cell of a row stands out, the others follow with their headings.
 *
 * @param table the table
 */
record SheetWords(SheetTable table) {

    void write(Story story) {
        for (List<String> row : table.rows()) {
            story.strong(row.get(0));
            StringBuilder rest = new StringBuilder();
            for (int column = 1; column < row.size(); column++) {
                if (!row.get(column).isEmpty()) {
                    rest.append(rest.isEmpty() ? "" : ";  ").append(table.headings().get(column)).append(' ').append(row.get(column));
                }
            }
            story.paragraph(rest.toString());
        }
    }
}
