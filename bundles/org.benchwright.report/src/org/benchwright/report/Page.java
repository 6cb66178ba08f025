package org.benchwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Plot;
import org.benchwright.core.SheetTable;
import org.benchwright.report.internal.Block;
import org.benchwright.report.internal.Document;
import org.benchwright.report.internal.Html;
import org.benchwright.report.internal.SectionBlocks;

/**
 * A page for a browser or a printer in one file: sentences, tables and charts. It loads nothing, runs nothing and is readable on paper and
 * in a browser's dark setting.
 *
 * @param title    of the page
 * @param basis    what it rests on
 * @param sections its parts
 */
public record Page(String title, List<String> basis, List<Section> sections) {

    /** Freezes the lists. */
    public Page {
        basis = List.copyOf(basis);
        sections = List.copyOf(sections);
    }

    /**
     * A part of a page.
     *
     * @param title     its heading
     * @param sentences what it says
     * @param plot      what it shows, if anything can be shown
     * @param tables    its numbers
     */
    public record Section(String title, List<String> sentences, Optional<Plot> plot, List<SheetTable> tables) {

        /** Freezes the lists. */
        public Section {
            sentences = List.copyOf(sentences);
            tables = List.copyOf(tables);
        }
    }

    /** The text of the HTML file. */
    public String html() {
        List<Block> blocks = new ArrayList<>(List.of(new Block.Title(title, "")));
        basis.forEach(sentence -> blocks.add(new Block.Text(sentence)));
        sections.forEach(section -> blocks.addAll(SectionBlocks.of(section)));
        return new Html(new Document(title, title, blocks)).text();
    }
}
