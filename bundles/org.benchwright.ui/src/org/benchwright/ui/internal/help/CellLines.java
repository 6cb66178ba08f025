package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

/** The words of a cell, broken into lines between words. */
final class CellLines {

    private CellLines() {
    }

    /** Single words, each with the blanks behind it. */
    static List<Run> words(List<Run> cell) {
        List<Run> words = new ArrayList<>();
        for (Run run : cell) {
            for (String word : run.words().split("(?<= )(?! )")) {
                words.add(run.saying(word));
            }
        }
        return words;
    }

    /**
     * The lines.
     *
     * @param cell  what it says
     * @param width how wide it is; a longer word has a line of its own
     * @param wide  how wide words are
     */
    static List<List<Run>> of(List<Run> cell, int width, ToIntFunction<Run> wide) {
        List<List<Run>> lines = new ArrayList<>();
        List<Run> line = new ArrayList<>();
        int filled = 0;
        for (List<Run> piece : unbreakable(words(cell))) {
            int needed = piece.stream().mapToInt(wide).sum();
            if (filled > 0 && filled + needed - blanks(piece, wide) > width) {
                lines.add(line);
                line = new ArrayList<>();
                filled = 0;
            }
            line.addAll(piece);
            filled += needed;
        }
        lines.add(line);
        return lines;
    }

    /** The widest piece that no line breaks. */
    static int longest(List<Run> cell, ToIntFunction<Run> wide) {
        return unbreakable(words(cell)).stream().mapToInt(piece -> piece.stream().mapToInt(wide).sum()).max().orElse(0);
    }

    /** Words between which no blank stands, such as a link and the comma behind it. */
    private static List<List<Run>> unbreakable(List<Run> words) {
        List<List<Run>> pieces = new ArrayList<>();
        boolean open = false;
        for (Run word : words) {
            if (!open) {
                pieces.add(new ArrayList<>());
            }
            pieces.get(pieces.size() - 1).add(word);
            open = !word.words().endsWith(" ");
        }
        return pieces;
    }

    private static int blanks(List<Run> piece, ToIntFunction<Run> wide) {
        Run last = piece.get(piece.size() - 1);
        return wide.applyAsInt(last) - wide.applyAsInt(last.saying(last.words().stripTrailing()));
    }
}
