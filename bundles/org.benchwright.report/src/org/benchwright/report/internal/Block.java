package org.benchwright.report.internal;

import java.util.List;

/** A part of a document, whatever it is shown on. */
public sealed interface Block {

    /** What the document is, once at its top. */
    record Title(String text, String below) implements Block {
    }

    /** The result, large. */
    record Banner(String text, String below) implements Block {
    }

    /** Begins a section. */
    record Heading(String text) implements Block {
    }

    /** Running text. */
    record Text(String text) implements Block {
    }

    /** Conditions under which the document holds, in smaller type. */
    record Small(String text) implements Block {
    }

    /** Names and values, one pair a line. */
    record Facts(List<Pair> pairs) implements Block {
        public Facts {
            pairs = List.copyOf(pairs);
        }
    }

    /** A name and its value. */
    record Pair(String name, String value) {
    }

    /**
     * A table.
     *
     * @param titles  of the columns
     * @param weights of the columns' widths
     * @param rows    cells, as many a row as there are titles
     */
    record Table(List<String> titles, List<Integer> weights, List<List<String>> rows) implements Block {
        public Table {
            titles = List.copyOf(titles);
            weights = List.copyOf(weights);
            rows = List.copyOf(rows);
        }
    }

    /** A machine-readable square with lines beside it. */
    record Square(String content, List<String> beside) implements Block {
        public Square {
            beside = List.copyOf(beside);
        }
    }
}
