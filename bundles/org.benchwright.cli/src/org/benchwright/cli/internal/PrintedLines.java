package org.benchwright.cli.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;

/** A printed text as lines of a terminal. */
final class PrintedLines {

    private static final String INDENT = "  ";

    private final int width;
    private final List<String> lines = new ArrayList<>();

    PrintedLines(int width) {
        this.width = width;
    }

    List<String> of(PrintedText text) {
        lines.clear();
        text.parts().forEach(this::part);
        return List.copyOf(lines);
    }

    private void part(Part part) {
        if (part instanceof PrintedText.Title title) {
            wrapped(title.words(), "", "");
            wrapped(title.below(), "", "");
            rule('=');
        } else if (part instanceof PrintedText.Heading heading) {
            lines.add("");
            wrapped(heading.words(), "", "");
            rule(heading.level() == 1 ? '=' : '-');
        } else if (part instanceof PrintedText.Sentence sentence) {
            wrapped(sentence.words(), INDENT, INDENT);
        } else if (part instanceof PrintedText.Instruction instruction) {
            lines.add("");
            wrapped(instruction.words(), INDENT, INDENT);
            lines.add("");
        } else if (part instanceof PrintedText.Hazard hazard) {
            hazard(hazard);
        } else if (part instanceof PrintedText.Asked asked) {
            wrapped(asked.words(), INDENT + "[ ] ", INDENT + "    ");
            asked.notes().forEach(note -> wrapped(note, INDENT + "    - ", INDENT + "      "));
        } else if (part instanceof PrintedText.Told told) {
            wrapped(told.words(), INDENT, INDENT);
            told.notes().forEach(note -> wrapped(note, INDENT + "  - ", INDENT + "    "));
        } else if (part instanceof PrintedText.Rows rows) {
            lines.addAll(new TextTable(rows.table(), width).allLines());
        } else {
            throw new IllegalArgumentException("no lines for " + part);
        }
    }

    private void hazard(PrintedText.Hazard hazard) {
        if (hazard.sentences().size() == 1) {
            wrapped(hazard.word() + ": " + hazard.sentences().get(0), INDENT + "### ", INDENT + "  # ");
            return;
        }
        String head = "### " + hazard.word() + " ";
        lines.add("");
        lines.add(INDENT + head + "#".repeat(Math.max(3, width - INDENT.length() - head.length())));
        hazard.sentences().forEach(sentence -> wrapped(sentence, INDENT + "# ", INDENT + "# "));
        lines.add(INDENT + "#".repeat(width - INDENT.length()));
    }

    private void wrapped(String text, String first, String rest) {
        lines.addAll(Wrap.lines(text, width, first, rest));
    }

    private void rule(char of) {
        lines.add(String.valueOf(of).repeat(width));
    }
}
