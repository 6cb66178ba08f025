package org.benchwright.core;

import java.util.List;

/**
 * A text to be read by people, as plain values: whoever knows the matter makes it, whoever shows or prints it takes it, and neither knows
 * the other.
 *
 * @param title  what it is, in one line
 * @param header on top of each page, where there are pages
 * @param parts  in the order in which they are read
 */
public record PrintedText(String title, String header, List<Part> parts) {

    /** Freezes the parts. */
    public PrintedText {
        parts = List.copyOf(parts);
    }

    /** A part of it. */
    public sealed interface Part {

        /** The key of what it is about, such as {@code step.lamps}; empty where it goes with the part before it. */
        String about();
    }

    /**
     * What the text is, once at its top.
     *
     * @param words large
     * @param below smaller, below it
     */
    public record Title(String words, String below, String about) implements Part {
    }

    /**
     * Begins a section.
     *
     * @param level 1 for a section, 2 for what is inside one
     */
    public record Heading(int level, String words, String about) implements Part {
    }

    /** Running text. */
    public record Sentence(String words, String about) implements Part {
    }

    /** What to do; stands out from what is around it. */
    public record Instruction(String words, String about) implements Part {
    }

    /**
     * A hazard under its signal word; never told by colour alone.
     *
     * @param signal    its signal word, for those who draw it
     * @param word      the signal word in capitals
     * @param sentences what is dangerous, what it can do, how to avoid it; or only the first, as a reminder
     */
    public record Hazard(SignalWord signal, String word, List<String> sentences, String about) implements Part {

        /** Freezes the sentences. */
        public Hazard {
            sentences = List.copyOf(sentences);
        }
    }

    /**
     * One thing that somebody does or answers.
     *
     * @param words what is asked
     * @param notes what belongs to it, in smaller type: how it is answered, how it is decided, where it leads
     */
    public record Asked(String words, List<String> notes, String about) implements Part {

        /** Freezes the notes. */
        public Asked {
            notes = List.copyOf(notes);
        }
    }

    /**
     * Something that is told, and asks nothing.
     *
     * @param words what it is
     * @param notes what belongs to it, in smaller type
     */
    public record Told(String words, List<String> notes, String about) implements Part {

        /** Freezes the notes. */
        public Told {
            notes = List.copyOf(notes);
        }
    }

    /** Things of one kind in rows. */
    public record Rows(SheetTable table, String about) implements Part {
    }
}
