package org.benchwright.report.internal;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

import org.benchwright.report.TestReport;

/** Words that stand on certificate, record and label alike. */
final class ReportWords {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    private ReportWords() {
    }

    /** An instant on paper, in UTC. */
    static String time(Instant instant) {
        return inTable(instant) + " UTC";
    }

    /** An instant in a column that says UTC by its title. */
    static String inTable(Instant instant) {
        return TIME.format(instant);
    }

    /** The verdict, large. */
    static String verdict(String word) {
        return switch (word) {
            case "accepted" -> Message.VERDICT_ACCEPTED.text();
            case "rejected" -> Message.VERDICT_REJECTED.text();
            case "undecided" -> Message.VERDICT_UNDECIDED.text();
            default -> Message.VERDICT_OPEN.text();
        };
    }

    /** How a record ended, large. */
    static String end(String word) {
        return switch (word) {
            case "superseded" -> Message.END_SUPERSEDED.text();
            case "recalled" -> Message.END_RECALLED.text();
            default -> Message.END_VOID.text();
        };
    }

    /** What stands large on a label. */
    static String large(TestReport report) {
        return report.standing().end().map(end -> end(end.word())).orElseGet(() -> verdict(report.heading().verdict().orElse("")));
    }

    /** The headings of columns. */
    static List<String> texts(Message... messages) {
        return List.of(messages).stream().map(Message::text).toList();
    }
}
