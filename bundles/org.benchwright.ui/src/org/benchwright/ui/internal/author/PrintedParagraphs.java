package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.SheetTable;
import org.benchwright.core.SignalWord;

/** A printed text as paragraphs, each with the part that it comes from. */
public final class PrintedParagraphs {

    /** How a paragraph looks. */
    public enum Look {
        TITLE, BELOW, SECTION, STEP, SENTENCE, INSTRUCTION, SIGNAL, HAZARD, ASKED, TOLD, NOTE, SPACE
    }

    /**
     * A paragraph.
     *
     * @param words  what is read
     * @param look   how it looks
     * @param signal its signal word, for those of a hazard
     * @param part   the place of its part among all parts
     */
    public record Paragraph(String words, Look look, Optional<SignalWord> signal, int part) {

        /** Whether nobody could tell one from the other, wherever they stand. */
        boolean looksLike(Paragraph other) {
            return words.equals(other.words) && look == other.look && signal.equals(other.signal);
        }
    }

    private final List<Paragraph> paragraphs = new ArrayList<>();
    private int part;

    private PrintedParagraphs() {
    }

    /** The paragraphs of parts, in order. */
    public static List<Paragraph> of(List<Part> parts) {
        PrintedParagraphs all = new PrintedParagraphs();
        for (all.part = 0; all.part < parts.size(); all.part++) {
            all.add(parts.get(all.part));
        }
        return List.copyOf(all.paragraphs);
    }

    private void add(Part each) {
        if (each instanceof PrintedText.Title title) {
            add(title.words(), Look.TITLE);
            add(title.below(), Look.BELOW);
        } else if (each instanceof PrintedText.Heading heading) {
            add("", Look.SPACE);
            add(heading.words(), heading.level() == 1 ? Look.SECTION : Look.STEP);
        } else if (each instanceof PrintedText.Sentence sentence) {
            add(sentence.words(), Look.SENTENCE);
        } else if (each instanceof PrintedText.Instruction instruction) {
            add(instruction.words(), Look.INSTRUCTION);
        } else if (each instanceof PrintedText.Hazard hazard) {
            add(hazard);
        } else if (each instanceof PrintedText.Asked asked) {
            add("\u2610  " + asked.words(), Look.ASKED);
            asked.notes().forEach(note -> add(note, Look.NOTE));
        } else if (each instanceof PrintedText.Told told) {
            add(told.words(), Look.TOLD);
            told.notes().forEach(note -> add(note, Look.NOTE));
        } else if (each instanceof PrintedText.Rows rows) {
            add(rows.table());
        } else {
            throw new IllegalArgumentException("no paragraphs for " + each);
        }
    }

    private void add(PrintedText.Hazard hazard) {
        boolean reminder = hazard.sentences().size() == 1;
        add(" " + hazard.word() + (reminder ? "   " + hazard.sentences().get(0) : ""), Look.SIGNAL, Optional.of(hazard.signal()));
        if (!reminder) {
            hazard.sentences().forEach(sentence -> add(sentence, Look.HAZARD, Optional.of(hazard.signal())));
        }
    }

    private void add(SheetTable table) {
        table.rows().forEach(row -> add(row.stream().filter(cell -> !cell.isBlank()).collect(Collectors.joining(", ")), Look.TOLD));
    }

    private void add(String words, Look look) {
        add(words, look, Optional.empty());
    }

    /** A paragraph is a line of the sheet, so words that are broken into lines make several. */
    private void add(String words, Look look, Optional<SignalWord> signal) {
        words.lines().forEach(line -> paragraphs.add(new Paragraph(line, look, signal, part)));
        if (words.isEmpty()) {
            paragraphs.add(new Paragraph("", look, signal, part));
        }
    }
}
