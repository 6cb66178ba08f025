package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.PublishedFigures;
import org.benchwright.workshop.SignedSheet;

/**
 * What an installed copy showed of itself, line by line, signed by the bench.
 *
 * @param lines what was tried, and whether it came out as it should
 */
public record SelfCheckSheet(List<Line> lines) {

    /** First line of every sheet, and the domain of its signature. */
    public static final String FORMAT = "benchwright.self-check/1";

    /**
     * One thing that was tried.
     *
     * @param what  in plain words
     * @param holds whether it came out as it should
     */
    public record Line(String what, boolean holds) {
    }

    public SelfCheckSheet {
        lines = List.copyOf(lines);
    }

    /** Published values, reckoned again by this copy. */
    public static List<Line> publishedValues() {
        return Stream.concat(SignedSheet.publishedValues().stream().map(value -> new Line(value.name(), value.holds())),
                PublishedFigures.check().stream().map(value -> new Line(value.name(), value.holds()))).toList();
    }

    /** This sheet and more lines. */
    public SelfCheckSheet with(List<Line> more) {
        List<Line> all = new ArrayList<>(lines);
        all.addAll(more);
        return new SelfCheckSheet(all);
    }

    /** Whether all came out as it should. */
    public boolean holds() {
        return !lines.isEmpty() && lines.stream().allMatch(Line::holds);
    }

    /**
     * The sheet with the bench's signature.
     *
     * @param ledger   the bench's ledger, beside which its key lies
     * @param software name and version of this copy
     * @param machine  what it runs on
     * @throws CannotStoreException if the bench's key can't be had
     */
    public String signed(Path ledger, String software, String machine, Instant now) throws CannotStoreException {
        StringBuilder text = new StringBuilder(FORMAT + "\n");
        text.append(Message.SHEET_HEAD.text(software, machine, now.toString())).append('\n');
        for (Line line : lines) {
            text.append((line.holds() ? Message.SHEET_HOLDS : Message.SHEET_FAILS).text(line.what())).append('\n');
        }
        text.append((holds() ? Message.SHEET_ALL : Message.SHEET_NOT_ALL).text(String.valueOf(lines.stream().filter(Line::holds).count()),
                String.valueOf(lines.size()))).append('\n');
        return Asked.read(() -> SignedSheet.sign(ledger, text.toString()));
    }
}
