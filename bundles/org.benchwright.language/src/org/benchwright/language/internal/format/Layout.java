package org.benchwright.language.internal.format;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.benchwright.language.internal.TextPlaces;
import org.benchwright.language.internal.format.Word.Kind;
import org.benchwright.language.internal.format.Word.Role;
import org.eclipse.xtext.nodemodel.ICompositeNode;

/**
 * Lays a text out. Every statement begins a line, indented by its blocks; a block that the writer put on one line stays there if it is
 * short; a line break within a statement stays, and what follows is indented once more; one blank line stays where there were some.
 * Only blanks change, never a word or a comment, so that the text means what it meant. Laying out twice is laying out once.
 */
public final class Layout {

    private static final String INDENT = "    ";
    /** Longer than this, no block stands on one line. */
    private static final int LONGEST_INLINE = 110;

    private final String text;
    private final String lineEnd;
    private final List<Word> words;
    private final Set<Integer> inline = new HashSet<>();
    private final List<Gap> gaps = new ArrayList<>();

    /**
     * What stands before a word, or at the end.
     *
     * @param offset where the blanks begin in the text
     * @param length how many characters they are
     * @param blanks what they are to be
     */
    public record Gap(int offset, int length, String blanks) {
    }

    private Layout(String text, ICompositeNode root) {
        this.text = text;
        lineEnd = TextPlaces.lineEnd(text);
        words = Words.of(root);
    }

    /**
     * What has to change.
     *
     * @param text the characters
     * @param root what the parser made of them, without syntax errors
     * @return the places whose blanks are to be others, in order
     */
    public static List<Gap> changes(String text, ICompositeNode root) {
        Layout layout = new Layout(text, root);
        layout.findInline();
        layout.lay();
        return layout.gaps.stream().filter(gap -> !text.substring(gap.offset(), gap.offset() + gap.length()).equals(gap.blanks())).toList();
    }

    // ---- blocks on one line

    private void findInline() {
        Deque<Integer> open = new ArrayDeque<>();
        for (int i = 0; i < words.size(); i++) {
            if (words.get(i).role() == Role.OPENS) {
                open.push(i);
            } else if (words.get(i).role() == Role.CLOSES && !open.isEmpty()) {
                int from = open.pop();
                if (fitsOneLine(from, i)) {
                    for (int inner = from; inner <= i; inner++) {
                        inline.add(inner);
                    }
                }
            }
        }
    }

    private boolean fitsOneLine(int from, int to) {
        int length = 0;
        for (int i = from; i <= to; i++) {
            Word word = words.get(i);
            boolean broken = i > from && word.lineBreaks() > 0 || word.kind() == Kind.LINE_COMMENT || word.text().contains("\n");
            if (broken) {
                return false;
            }
            length += word.text().length() + (word.glued() ? 0 : 1);
        }
        return length <= LONGEST_INLINE;
    }

    // ---- the blanks before each word

    private void lay() {
        int depth = 0;
        int end = 0;
        for (int i = 0; i < words.size(); i++) {
            Word word = words.get(i);
            boolean closes = word.role() == Role.CLOSES;
            depth -= closes ? 1 : 0;
            gaps.add(new Gap(end, word.offset() - end, i == 0 ? "" : before(i, depth)));
            depth += word.role() == Role.OPENS ? 1 : 0;
            end = word.end();
        }
        gaps.add(new Gap(end, text.length() - end, words.isEmpty() ? "" : lineEnd));
    }

    private String before(int i, int depth) {
        Word word = words.get(i);
        Word last = words.get(i - 1);
        boolean mustBreak = last.kind() == Kind.LINE_COMMENT;
        boolean begins = beginsLine(i);
        if (!mustBreak && inline.contains(i)) {
            return i > 0 && word.glued() ? "" : " ";
        } else if (begins || mustBreak && (word.role() == Role.CLOSES || word.role() == Role.BEGINS)) {
            return lineBreaks(i) + INDENT.repeat(depth);
        } else if (mustBreak || word.lineBreaks() > 0 && word.role() != Role.OPENS && !word.glued()) {
            return lineEnd + INDENT.repeat(depth + (isBetweenItems(i) || word.role() == Role.ALIGNED ? 0 : 1));
        }
        return word.glued() ? "" : " ";
    }

    private boolean beginsLine(int i) {
        Word word = words.get(i);
        return word.role() == Role.BEGINS || word.role() == Role.CLOSES || word.isComment() && word.lineBreaks() > 0 && isBetweenItems(i);
    }

    /** A comment before the next statement or brace belongs to what follows it. */
    private boolean isBetweenItems(int i) {
        int next = i;
        while (next < words.size() && words.get(next).isComment()) {
            next++;
        }
        return words.get(i).isComment()
                && (next == words.size() || words.get(next).role() == Role.BEGINS || words.get(next).role() == Role.CLOSES);
    }

    /** One blank line at most, and none at the beginning or end of a block. */
    private String lineBreaks(int i) {
        Word last = words.get(i - 1);
        boolean blank = words.get(i).lineBreaks() > 1 && last.role() != Role.OPENS && words.get(i).role() != Role.CLOSES;
        return blank ? lineEnd + lineEnd : lineEnd;
    }
}
