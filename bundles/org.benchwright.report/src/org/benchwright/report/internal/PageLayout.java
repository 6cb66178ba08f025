package org.benchwright.report.internal;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.benchwright.report.Look;

/** Puts a document's blocks one below the other on A4 pages, with its header on each and the number of the page below. */
final class PageLayout {

    private static final float MARGIN = 51;
    private static final float TOP = 72;
    private static final float BOTTOM = 60;
    private static final float BODY = 9;
    private static final float LEADING = 1.32f;
    private static final float GAP = 6;
    private static final float NAMES = 118;
    private static final float SQUARE = 128;
    private static final float BOX = 16;
    /** A heading is never alone at the foot of a page: as much as it, the head of a table and four lines need. */
    private static final float HEADED = 96;
    private static final int PICTURE_WIDTH = 760;
    private static final int PICTURE_HEIGHT = 300;
    private static final int FINE = 3;

    private final Document document;
    private final Paper paper;
    private final Typeface regular;
    private final Typeface bold;
    private float y;

    PageLayout(Document document, PDDocument pdf) throws IOException {
        this.document = document;
        this.paper = new Paper(pdf, PDRectangle.A4);
        this.regular = Typeface.regular(pdf);
        this.bold = Typeface.bold(pdf);
    }

    /** Lays the whole document out. */
    void layOut(String footer) throws IOException {
        turn();
        for (Block block : document.blocks()) {
            put(block);
        }
        for (int page = 0; page < paper.pages(); page++) {
            paper.back(page);
            frame(page, footer);
        }
        paper.finish();
    }

    private void frame(int page, String footer) throws IOException {
        paper.write(regular, 8, MARGIN, 42, regular.line(document.header(), 8, width()));
        paper.rule(MARGIN, 48, width(), 0.5f);
        float below = paper.height() - 34;
        paper.rule(MARGIN, below - 12, width(), 0.5f);
        paper.write(regular, 8, MARGIN, below, regular.shown(footer));
        String number = regular.shown(Message.PAGE.text(String.valueOf(page + 1), String.valueOf(paper.pages())));
        paper.write(regular, 8, MARGIN + width() - regular.width(number, 8), below, number);
    }

    private float width() {
        return paper.width() - 2 * MARGIN;
    }

    private void turn() throws IOException {
        paper.turn();
        y = TOP;
    }

    private void room(float needed) throws IOException {
        if (y + needed > paper.height() - BOTTOM) {
            turn();
        }
    }

    private void put(Block block) throws IOException {
        if (block instanceof Block.Title title) {
            room(60);
            lines(bold, 20, title.text(), MARGIN, width());
            lines(regular, 10, title.below(), MARGIN, width());
            y += GAP;
        } else if (block instanceof Block.Banner banner) {
            banner(banner);
        } else if (block instanceof Block.Heading heading) {
            room(HEADED);
            y += GAP;
            lines(bold, 11, heading.text(), MARGIN, width());
            y += 1;
        } else if (block instanceof Block.Text text) {
            lines(regular, BODY, text.text(), MARGIN, width());
            y += 2;
        } else if (block instanceof Block.Small small) {
            lines(regular, 8, small.text(), MARGIN, width());
            y += 2;
        } else if (block instanceof Block.Facts facts) {
            for (Block.Pair pair : facts.pairs()) {
                row(List.of(bold.lines(pair.name(), BODY, NAMES - 8), regular.lines(pair.value(), BODY, width() - NAMES)),
                        List.of(0f, NAMES), List.of(bold, regular), BODY);
            }
            y += 2;
        } else if (block instanceof Block.Table table) {
            table(table);
        } else if (block instanceof Block.Square square) {
            square(square);
        } else if (block instanceof Block.Picture picture) {
            picture(picture);
        } else {
            putWork(block);
        }
    }

    private void putWork(Block block) throws IOException {
        if (block instanceof Block.Subheading heading) {
            room(HEADED);
            y += GAP;
            lines(bold, 10, heading.text(), MARGIN, width());
        } else if (block instanceof Block.Strong strong) {
            y += 1;
            lines(bold, 11, strong.text(), MARGIN, width());
            y += 2;
        } else if (block instanceof Block.Panel panel) {
            panel(panel);
        } else if (block instanceof Block.Task task) {
            room(Math.min(3, 1 + task.notes().size()) * BODY * LEADING);
            paper.box(MARGIN + 2, y + 4.5f, 7);
            withNotes(task.text(), task.notes(), BOX);
        } else if (block instanceof Block.Told told) {
            room(Math.min(3, 1 + told.notes().size()) * BODY * LEADING);
            withNotes(told.text(), told.notes(), 0);
        } else {
            throw new IllegalArgumentException("no place for " + block);
        }
    }

    /** Not broken over two pages unless it is higher than one. */
    private void panel(Block.Panel panel) throws IOException {
        float inside = width() - 20;
        List<String> text = new ArrayList<>();
        for (String sentence : panel.sentences()) {
            text.addAll(regular.lines(sentence, BODY, inside));
        }
        int most = (int) ((paper.height() - BOTTOM - TOP - 2 * GAP - 20) / (BODY * LEADING));
        for (int from = 0; from < text.size(); from += most) {
            panel(panel.word(), text.subList(from, Math.min(text.size(), from + most)));
        }
    }

    private void panel(String word, List<String> text) throws IOException {
        float high = 20 + text.size() * BODY * LEADING;
        room(high + 2 * GAP);
        y += GAP / 2;
        paper.fill(MARGIN, y, 4, high);
        paper.rule(MARGIN, y, width(), 0.8f);
        paper.rule(MARGIN, y + high, width(), 0.8f);
        paper.write(bold, 11, MARGIN + 12, y + 13, bold.shown(word));
        float at = y + 15;
        for (String line : text) {
            at += BODY * LEADING;
            paper.write(regular, BODY, MARGIN + 12, at, line);
        }
        y += high + GAP / 2;
    }

    private void withNotes(String text, List<String> notes, float inset) throws IOException {
        lines(regular, BODY, text, MARGIN + inset, width() - inset);
        for (String note : notes) {
            lines(regular, 8, note, MARGIN + BOX, width() - BOX);
        }
        y += 3;
    }

    private void lines(Typeface face, float size, String text, float x, float wide) throws IOException {
        for (String line : face.lines(text, size, wide)) {
            room(size * LEADING);
            y += size * LEADING;
            paper.write(face, size, x, y, line);
        }
    }

    /** As a panel, not broken over two pages unless it is higher than one; the result stands over each part. */
    private void banner(Block.Banner banner) throws IOException {
        List<String> below = regular.lines(banner.below(), 10, width() - 20);
        int most = (int) ((paper.height() - BOTTOM - TOP - 2 * GAP - 38) / (10 * LEADING));
        for (int from = 0; from < below.size(); from += most) {
            banner(banner.text(), below.subList(from, Math.min(below.size(), from + most)));
        }
    }

    private void banner(String text, List<String> below) throws IOException {
        float high = 38 + below.size() * 10 * LEADING;
        room(high + GAP);
        y += GAP;
        paper.fill(MARGIN, y, 4, high);
        paper.rule(MARGIN, y, width(), 0.6f);
        paper.rule(MARGIN, y + high, width(), 0.6f);
        paper.write(bold, 20, MARGIN + 14, y + 25, bold.shown(text));
        float at = y + 28;
        for (String line : below) {
            at += 10 * LEADING;
            paper.write(regular, 10, MARGIN + 14, at, line);
        }
        y += high + GAP;
    }

    /** Writes cells side by side, as high as the highest; a row that is higher than a page goes on on the next. */
    private void row(List<List<String>> cells, List<Float> offsets, List<Typeface> faces, float size) throws IOException {
        int most = cells.stream().mapToInt(List::size).max().orElse(0);
        room(roomOf(cells, size));
        for (int line = 0; line < most; line++) {
            room(size * LEADING);
            y += size * LEADING;
            for (int cell = 0; cell < cells.size(); cell++) {
                if (line < cells.get(cell).size()) {
                    paper.write(faces.get(cell), size, MARGIN + offsets.get(cell), y, cells.get(cell).get(line));
                }
            }
        }
    }

    /** A low row is kept together; of a high one, some lines. */
    private static float roomOf(List<List<String>> cells, float size) {
        return Math.min(cells.stream().mapToInt(List::size).max().orElse(0), 4) * size * LEADING;
    }

    private void table(Block.Table table) throws IOException {
        float size = 8;
        int whole = table.weights().stream().mapToInt(Integer::intValue).sum();
        List<Float> offsets = new ArrayList<>();
        List<Float> widths = new ArrayList<>();
        float x = 0;
        for (int weight : table.weights()) {
            float wide = width() * weight / whole;
            offsets.add(x);
            widths.add(wide - 6);
            x += wide;
        }
        y += 2;
        List<List<String>> first = table.rows().isEmpty() ? List.of() : cells(table.rows().get(0), regular, size, widths);
        room(roomOf(cells(table.titles(), bold, size, widths), size) + 3 + roomOf(first, size));
        head(table, offsets, widths, size);
        for (List<String> row : table.rows()) {
            List<List<String>> cells = cells(row, regular, size, widths);
            int page = paper.pages();
            room(roomOf(cells, size));
            if (paper.pages() != page) {
                head(table, offsets, widths, size);
            }
            row(cells, offsets, faces(regular, widths.size()), size);
            paper.rule(MARGIN, y + 2.5f, width(), 0.2f);
            y += 2.5f;
        }
        y += 3;
    }

    private void head(Block.Table table, List<Float> offsets, List<Float> widths, float size) throws IOException {
        row(cells(table.titles(), bold, size, widths), offsets, faces(bold, widths.size()), size);
        paper.rule(MARGIN, y + 3, width(), 0.6f);
        y += 3;
    }

    private static List<List<String>> cells(List<String> texts, Typeface face, float size, List<Float> widths) throws IOException {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            cells.add(face.lines(texts.get(i), size, widths.get(i)));
        }
        return cells;
    }

    private static List<Typeface> faces(Typeface face, int count) {
        return Collections.nCopies(count, face);
    }

    /** Drawn in the size of its letters, and printed at some 330 dots an inch. */
    private void picture(Block.Picture picture) throws IOException {
        float height = width() * PICTURE_HEIGHT / PICTURE_WIDTH;
        room(height + 2 * GAP);
        BufferedImage drawn = new BufferedImage(PICTURE_WIDTH * FINE, PICTURE_HEIGHT * FINE, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D pencil = drawn.createGraphics();
        pencil.scale(FINE, FINE);
        Drawing.of(picture.plot(), Look.PRINT, PICTURE_WIDTH, PICTURE_HEIGHT).paint(pencil, PICTURE_WIDTH, PICTURE_HEIGHT);
        pencil.dispose();
        paper.picture(drawn, MARGIN, y + GAP, width(), height);
        y += height + 2 * GAP;
    }

    private void square(Block.Square square) throws IOException {
        room(SQUARE + GAP);
        y += GAP;
        draw(paper, Square.of(square.content()), MARGIN, y, SQUARE);
        float begin = y;
        for (String text : square.beside()) {
            for (String line : regular.lines(text, 8, width() - SQUARE - 12)) {
                y += 8 * LEADING;
                paper.write(regular, 8, MARGIN + SQUARE + 12, y, line);
            }
            y += 2;
        }
        y = Math.max(y, begin + SQUARE) + GAP;
    }

    /** Draws a code with its quiet zone into a square of {@code side} points. */
    static void draw(Paper paper, Square square, float x, float top, float side) throws IOException {
        float module = side / (square.modules() + 2 * Square.QUIET);
        for (int row = 0; row < square.modules(); row++) {
            for (int column = 0; column < square.modules(); column++) {
                int length = 0;
                while (column + length < square.modules() && square.dark()[row][column + length]) {
                    length++;
                }
                if (length > 0) {
                    // A run at a time: single modules would show hair lines between them.
                    paper.fill(x + (column + Square.QUIET) * module, top + (row + Square.QUIET) * module, length * module, module * 1.02f);
                    column += length;
                }
            }
        }
    }
}
