package org.benchwright.report.internal;

import java.util.List;

import org.benchwright.core.Plot;
import org.benchwright.core.SignalWord;

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

    /** Begins a part of a section. */
    record Subheading(String text) implements Block {
    }

    /** What to do; stands out. */
    record Strong(String text) implements Block {
    }

    /**
     * A hazard in a frame.
     *
     * @param signal    its signal word
     * @param word      the signal word as it is shown
     * @param sentences below it, at least one
     */
    record Panel(SignalWord signal, String word, List<String> sentences) implements Block {
        public Panel {
            sentences = List.copyOf(sentences);
        }
    }

    /**
     * Something to do or to answer, with a box to tick on paper.
     *
     * @param text  what is asked
     * @param notes what belongs to it, in smaller type
     */
    record Task(String text, List<String> notes) implements Block {
        public Task {
            notes = List.copyOf(notes);
        }
    }

    /**
     * Something with more about it.
     *
     * @param text  what it is
     * @param notes what belongs to it, in smaller type
     */
    record Told(String text, List<String> notes) implements Block {
        public Told {
            notes = List.copyOf(notes);
        }
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

    /** A plot over the whole width. */
    record Picture(Plot plot) implements Block {
    }

    /** A machine-readable square with lines beside it. */
    record Square(String content, List<String> beside) implements Block {
        public Square {
            beside = List.copyOf(beside);
        }
    }
}
