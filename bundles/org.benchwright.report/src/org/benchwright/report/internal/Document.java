package org.benchwright.report.internal;

import java.util.List;

/**
 * A document, whatever it is shown on.
 *
 * @param title  for the file's own description
 * @param header on top of each page
 * @param blocks its parts
 */
public record Document(String title, String header, List<Block> blocks) {
    public Document {
        blocks = List.copyOf(blocks);
    }
}
