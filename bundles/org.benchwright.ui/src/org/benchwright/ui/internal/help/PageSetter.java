package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.ui.internal.look.Palette;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GlyphMetrics;
import org.eclipse.swt.graphics.ImageData;

/** Sets a page for a width: headings, paragraphs, lists, code, tables and pictures, one below the other. */
final class PageSetter extends AbstractVisitor {

    private static final String PICTURE = "\uFFFC";
    private static final int[] NO_TABS = {};
    private static final int STEP = 22;
    private static final int APART = 9;

    private final ManualPage page;
    private final int width;
    private final Faces faces;
    private final Palette palette;
    private final StringBuilder text = new StringBuilder();
    private final List<StyleRange> styles = new ArrayList<>();
    private final List<SetPage.Line> lines = new ArrayList<>();
    private final List<SetPage.LinkAt> links = new ArrayList<>();
    private final List<SetPage.HeadingAt> headings = new ArrayList<>();
    private final List<Passage> passages = new ArrayList<>();
    private final List<SetPage.PictureAt> pictures = new ArrayList<>();
    private int line;
    private int indent;
    private Optional<String> marker = Optional.empty();

    private PageSetter(ManualPage page, int width, Faces faces, Palette palette) {
        this.page = page;
        this.width = width;
        this.faces = faces;
        this.palette = palette;
    }

    /**
     * Sets a page.
     *
     * @param width how wide a line may be, in pixels
     */
    static SetPage set(ManualPage page, int width, Faces faces, Palette palette) {
        PageSetter setter = new PageSetter(page, width, faces, palette);
        page.document().accept(setter);
        return new SetPage(setter.text.toString(), setter.styles, setter.lines, setter.links, setter.headings, setter.passages, setter.pictures);
    }

    /** What links call a heading. */
    static String anchor(String words) {
        return words.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-');
    }

    @Override
    public void visit(Heading heading) {
        String words = Runs.words(Runs.of(heading));
        headings.add(new SetPage.HeadingAt(words, anchor(words), heading.getLevel(), text.length()));
        stand(0, 0, heading.getLevel() == 1 ? 0 : 2 * APART, NO_TABS, Optional.empty());
        int start = text.length();
        write(words, faces.heading(heading.getLevel()), palette.text());
        passage(start);
        end();
    }

    @Override
    public void visit(Paragraph paragraph) {
        if (paragraph.getFirstChild() instanceof Image image && paragraph.getFirstChild() == paragraph.getLastChild()) {
            picture(image);
            return;
        }
        boolean tight = marker.isPresent();
        stand(indent - (tight ? STEP : 0), tight ? STEP : 0, tight ? APART / 3 : APART, tight ? new int[] {indent} : NO_TABS, Optional.empty());
        marker.ifPresent(mark -> text.append(mark).append('\t'));
        marker = Optional.empty();
        int start = text.length();
        Runs.of(paragraph).forEach(this::write);
        passage(start);
        end();
    }

    @Override
    public void visit(BulletList list) {
        list(list, 0);
    }

    @Override
    public void visit(OrderedList list) {
        list(list, list.getMarkerStartNumber());
    }

    private void list(Node list, int first) {
        int number = first;
        indent += STEP;
        for (Node item = list.getFirstChild(); item instanceof ListItem; item = item.getNext()) {
            marker = Optional.of(number == 0 ? "\u2022" : number++ + ".");
            visitChildren(item);
            marker = Optional.empty();
        }
        indent -= STEP;
    }

    @Override
    public void visit(BlockQuote quote) {
        indent += STEP;
        visitChildren(quote);
        indent -= STEP;
    }

    @Override
    public void visit(FencedCodeBlock code) {
        code(code.getLiteral());
    }

    @Override
    public void visit(IndentedCodeBlock code) {
        code(code.getLiteral());
    }

    private void code(String literal) {
        int above = APART;
        for (String typed : literal.stripTrailing().split("\n", -1)) {
            stand(indent + STEP, STEP, above, NO_TABS, Optional.of(palette.ground()));
            above = 0;
            int start = text.length();
            write(new Run(typed, Run.Face.CODE, Optional.empty()));
            passage(start);
            end();
        }
    }

    @Override
    public void visit(CustomBlock block) {
        if (block instanceof TableBlock table) {
            table(TableRows.of(table));
        } else {
            visitChildren(block);
        }
    }

    private void table(TableRows table) {
        List<Integer> wanted = table.widths(cell -> cell.stream()
                .flatMap(run -> CellLines.words(List.of(run)).stream()).mapToInt(faces::width).sum());
        List<Integer> least = table.widths(cell -> CellLines.longest(cell, faces::width));
        Optional<List<Integer>> widths = ColumnWidths.of(wanted, least, width - indent);
        boolean first = true;
        for (List<List<Run>> row : table.rows()) {
            if (widths.isPresent()) {
                row(row, widths.get(), first);
            } else {
                stacked(row, table.rows().get(0), first);
            }
            first = false;
        }
    }

    private void row(List<List<Run>> cells, List<Integer> widths, boolean first) {
        List<List<List<Run>>> broken = IntStream.range(0, cells.size())
                .mapToObj(i -> CellLines.of(cells.get(i), widths.get(i) - TableRows.GAP, faces::width)).toList();
        int[] tabs = tabs(widths);
        List<StringBuilder> words = new ArrayList<>();
        List<List<Integer>> at = new ArrayList<>();
        cells.forEach(cell -> {
            words.add(new StringBuilder());
            at.add(new ArrayList<>());
        });
        int most = broken.stream().mapToInt(List::size).max().orElse(0);
        for (int i = 0; i < most; i++) {
            lines.add(new SetPage.Line(line, 0, 0, i > 0 ? 0 : first ? APART : APART / 2 + 1, i == 0 && !first, tabs, Optional.empty()));
            for (int column = 0; column < cells.size(); column++) {
                if (column > 0) {
                    text.append('\t');
                }
                if (i < broken.get(column).size()) {
                    cellLine(broken.get(column).get(i), words.get(column), at.get(column));
                }
            }
            end();
        }
        for (int column = 0; column < cells.size(); column++) {
            if (!at.get(column).isEmpty()) {
                passages.add(new Passage(words.get(column).toString(), at.get(column)));
            }
        }
    }

    private void cellLine(List<Run> runs, StringBuilder words, List<Integer> at) {
        for (Run run : runs) {
            int start = text.length();
            write(run);
            words.append(run.words());
            IntStream.range(start, text.length()).forEach(at::add);
        }
    }

    private static int[] tabs(List<Integer> widths) {
        int[] tabs = new int[widths.size()];
        int stop = 0;
        for (int i = 0; i < tabs.length; i++) {
            stop += widths.get(i);
            tabs[i] = stop;
        }
        return tabs;
    }

    /** Where there is no room for columns, cells stand one below the other, each behind what its column is called. */
    private void stacked(List<List<Run>> cells, List<List<Run>> head, boolean first) {
        if (first) {
            return;
        }
        for (int column = 0; column < cells.size(); column++) {
            lines.add(new SetPage.Line(line, column == 0 ? 0 : STEP, STEP, column == 0 ? APART : 0, column == 0, NO_TABS, Optional.empty()));
            if (column > 0 && !head.get(column).isEmpty()) {
                write(Runs.words(head.get(column)) + ": ", faces.of(Run.Face.PLAIN), palette.quiet());
            }
            int start = text.length();
            cells.get(column).forEach(this::write);
            passage(start);
            end();
        }
    }

    private void picture(Image image) {
        String file = page.place().follow(image.getDestination()).page();
        Optional<ImageData> data = Optional.ofNullable(page.pictures().get(file));
        data.ifPresent(known -> {
            int shown = Math.max(1, Math.min(known.width, width - indent));
            int height = Math.max(1, (int) Math.round((double) known.height * shown / known.width));
            stand(indent, 0, APART, NO_TABS, Optional.empty());
            pictures.add(new SetPage.PictureAt(text.length(), file, shown, height));
            StyleRange style = new StyleRange();
            style.start = text.length();
            style.length = 1;
            style.metrics = new GlyphMetrics(height, 0, shown);
            styles.add(style);
            text.append(PICTURE);
            end();
        });
        stand(indent, 0, 0, NO_TABS, Optional.empty());
        int start = text.length();
        write(Runs.words(Runs.of(image)), faces.of(Run.Face.PLAIN), palette.quiet());
        passage(start);
        end();
    }

    private void write(Run run) {
        int start = text.length();
        write(run.words(), faces.of(run.face()), run.link().isPresent() ? palette.link() : palette.text());
        run.link().ifPresent(to -> link(start, run.words().length(), to));
    }

    /** Parts of one link that stand side by side are one link. */
    private void link(int start, int length, String to) {
        styles.get(styles.size() - 1).underline = true;
        int last = links.size() - 1;
        if (last >= 0 && links.get(last).to().equals(to) && links.get(last).start() + links.get(last).length() == start) {
            links.set(last, new SetPage.LinkAt(links.get(last).start(), links.get(last).length() + length, to));
        } else {
            links.add(new SetPage.LinkAt(start, length, to));
        }
    }

    private void write(String words, Font font, Color colour) {
        if (!words.isEmpty()) {
            StyleRange style = new StyleRange(text.length(), words.length(), colour, null, SWT.NORMAL);
            style.font = font;
            styles.add(style);
            text.append(words);
        }
    }

    private void passage(int start) {
        if (text.length() > start) {
            passages.add(new Passage(text.substring(start), IntStream.range(start, text.length()).boxed().toList()));
        }
    }

    private void stand(int from, int hang, int above, int[] tabs, Optional<Color> ground) {
        lines.add(new SetPage.Line(line, from, hang, above, false, tabs, ground));
    }

    private void end() {
        text.append('\n');
        line++;
    }
}
