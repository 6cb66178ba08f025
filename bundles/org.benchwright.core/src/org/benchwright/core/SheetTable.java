package org.benchwright.core;

import java.util.List;

/**
 * Numbers in rows, as they are shown and exported.
 *
 * @param name     a short name that can be part of a file name: small letters, digits and hyphens
 * @param headings of the columns, with their units
 * @param rows     each as long as the headings
 */
public record SheetTable(String name, List<String> headings, List<List<String>> rows) {

    /**
     * Freezes the rows.
     *
     * @throws IllegalArgumentException when a row is of another length, or the name could not be part of a file name
     */
    public SheetTable {
        headings = List.copyOf(headings);
        rows = rows.stream().map(List::copyOf).toList();
        int width = headings.size();
        if (rows.stream().anyMatch(row -> row.size() != width)) {
            throw new IllegalArgumentException("Each row needs " + width + " cells.");
        }
        if (!name.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            throw new IllegalArgumentException("Not a table's name: " + name);
        }
    }
}
