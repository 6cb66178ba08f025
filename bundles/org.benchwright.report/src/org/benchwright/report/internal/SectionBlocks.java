package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.benchwright.core.SheetTable;
import org.benchwright.report.Page;

/** A section of a page as blocks of a document. */
public final class SectionBlocks {

    /** The last column tells in words; the others hold a number or a word. */
    private static final int LAST_COLUMN = 12;

    private SectionBlocks() {
    }

    /** Its blocks. The words stand beside the plot: they say what may be read off it. */
    public static List<Block> of(Page.Section section) {
        List<Block> blocks = new ArrayList<>(List.of(new Block.Heading(section.title())));
        section.sentences().forEach(sentence -> blocks.add(new Block.Text(sentence)));
        section.plot().ifPresent(plot -> blocks.add(new Block.Picture(plot)));
        section.tables().stream().filter(table -> !table.rows().isEmpty()).map(SectionBlocks::table).forEach(blocks::add);
        return blocks;
    }

    private static Block table(SheetTable table) {
        List<Integer> weights = new ArrayList<>(Collections.nCopies(table.headings().size() - 1, 2));
        weights.add(LAST_COLUMN);
        return new Block.Table(table.headings(), weights, table.rows());
    }
}
