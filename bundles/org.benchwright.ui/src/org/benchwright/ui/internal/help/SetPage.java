package org.benchwright.ui.internal.help;

import java.util.List;
import java.util.Optional;

import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.Color;

/**
 * A page as it is set for a width.
 *
 * @param text     all of it; where a picture stands, one character
 * @param styles   how its parts look, in order
 * @param lines    how its lines stand, those that are not like any other
 * @param links    what leads elsewhere, in order
 * @param headings what its parts are called, in order
 * @param passages its words, in order
 * @param pictures its pictures
 */
record SetPage(String text, List<StyleRange> styles, List<Line> lines, List<LinkAt> links, List<HeadingAt> headings, List<Passage> passages,
        List<PictureAt> pictures) {

    static final SetPage EMPTY = new SetPage("", List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    /**
     * A line.
     *
     * @param number which, from 0
     * @param indent how far it is set in, in pixels
     * @param hang   how much further the lines are into which it is broken
     * @param above  room above it, in pixels
     * @param ruled  whether a rule stands in that room
     * @param tabs   where tabs lead, in pixels; none for the usual ones
     * @param ground behind it, where that is not the ground of the page
     */
    record Line(int number, int indent, int hang, int above, boolean ruled, int[] tabs, Optional<Color> ground) {
    }

    /**
     * A link.
     *
     * @param start  where its words begin
     * @param length how many characters they are
     * @param to     where it leads, as the page says it
     */
    record LinkAt(int start, int length, String to) {
    }

    /**
     * A heading.
     *
     * @param words  what it says
     * @param anchor what links call it
     * @param depth  1 for the title of the page
     * @param start  where it begins
     */
    record HeadingAt(String words, String anchor, int depth, int start) {
    }

    /**
     * A picture.
     *
     * @param at     the character that stands for it
     * @param file   where it lies in the source
     * @param width  as shown, in pixels
     * @param height as shown, in pixels
     */
    record PictureAt(int at, String file, int width, int height) {
    }
}
