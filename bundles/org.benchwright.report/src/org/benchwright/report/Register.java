package org.benchwright.report;

import java.util.ArrayList;
import java.util.List;
import org.benchwright.report.internal.Message;
import org.benchwright.report.internal.ReportJson;

/**
 * Many tests as one list, a line each.
 *
 * @param reports the tests
 */
public record Register(List<TestReport> reports) {

    private static final List<String> TITLES = List.of("test", "serial", "family", "procedure", "revision", "station", "technicians", "opened",
            "concluded", "state", "verdict", "reason", "departures", "nonconformities", "rehearsal", "predecessor", "standing");

    public Register {
        reports = List.copyOf(reports);
    }

    /** As CSV, safe to open in a spreadsheet. */
    public String csv() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(TITLES);
        reports.forEach(report -> rows.add(row(report)));
        return Csv.of(rows);
    }

    private static List<String> row(TestReport report) {
        TestReport.Heading heading = report.heading();
        return List.of(heading.test(), heading.serial(), heading.family(), heading.procedure(), String.valueOf(heading.revision()),
                heading.station(), String.join("; ", heading.technicians()), heading.opened().toString(),
                heading.concluded().map(Object::toString).orElse(""), heading.sealed() ? "sealed" : "open", heading.verdict().orElse(""),
                heading.reason(), String.valueOf(report.departures().size()), String.valueOf(report.nonconformities().size()),
                (heading.rehearsal() ? Message.YES : Message.NO).text(), heading.predecessor().orElse(""),
                report.standing().end().map(TestReport.End::word).orElse(report.standing().words()));
    }

    /** As JSON: one object for each test in full, one after the other in an array. */
    public String json() {
        return ReportJson.all(reports);
    }
}
