package org.benchwright.report.internal;

import java.util.List;
import java.util.function.BiConsumer;
import org.benchwright.report.TestReport;

/**
 * A report for machines. All values are strings, so that 23.90 keeps its last digit.
 *
 * @param report the test
 */
public record ReportJson(TestReport report) {

    /** Name and version of the form. */
    public static final String FORMAT = "benchwright.report/1";

    /** The file's text. */
    public String text() {
        JsonWriter json = new JsonWriter();
        json.object(() -> {
            json.member("format", FORMAT);
            json.member("number", report.number());
            report.replaces().ifPresent(old -> json.member("replaces", old));
            heading(json, report.heading());
            list(json, "results", report.results(), ReportJson::result);
            json.texts("soaks", report.soaks());
            list(json, "instruments", report.instruments(), (to, each) -> {
                to.member("name", each.name());
                to.member("asset", each.asset());
                to.member("uncertainty", each.uncertainty());
                to.member("due", each.due());
            });
            json.texts("departures", report.departures());
            json.texts("nonconformities", report.nonconformities());
            list(json, "attachments", report.attachments(), (to, each) -> {
                to.member("name", each.name());
                to.member("what", each.what());
                to.member("sha256", each.digest());
            });
            list(json, "amendments", report.amendments(), (to, each) -> {
                to.member("sequence", String.valueOf(each.sequence()));
                to.member("instant", each.instant().toString());
                to.member("kind", each.kind());
                to.member("by", each.by());
                to.member("words", each.words());
            });
            list(json, "story", report.story(), (to, each) -> {
                to.member("sequence", String.valueOf(each.sequence()));
                to.member("instant", each.instant().toString());
                to.member("who", each.who());
                to.member("words", each.words());
                to.flag("struck", each.struck());
            });
        });
        return json.text();
    }

    private static void heading(JsonWriter json, TestReport.Heading heading) {
        json.member("test", heading.test());
        json.flag("rehearsal", heading.rehearsal());
        json.flag("sealed", heading.sealed());
        heading.verdict().ifPresent(word -> json.member(heading.rehearsal() ? "wouldBe" : "verdict", word));
        json.member("reason", heading.reason());
        json.member("serial", heading.serial());
        json.member("family", heading.family());
        json.member("procedure", heading.procedure());
        json.member("revision", String.valueOf(heading.revision()));
        json.member("procedureText", heading.text());
        json.member("station", heading.station());
        json.member("software", heading.software());
        json.texts("technicians", heading.technicians());
        json.member("opened", heading.opened().toString());
        heading.concluded().ifPresent(end -> json.member("concluded", end.toString()));
        heading.predecessor().ifPresent(before -> json.member("predecessor", before));
    }

    private static void result(JsonWriter to, TestReport.Result result) {
        to.member("step", result.step());
        to.member("what", result.what());
        to.member("outcome", result.outcome());
        to.member("words", result.words());
        result.numbers().ifPresent(numbers -> {
            to.member("rule", numbers.rule());
            to.member("value", numbers.value());
            to.member("limits", numbers.limits());
            to.member("uncertainty", numbers.uncertainty());
            to.member("margin", numbers.margin());
            numbers.certainty().ifPresent(sure -> {
                to.member("guardBand", sure.guardBand());
                to.member("conformance", sure.conformance());
                to.member("falseAccept", sure.falseAccept());
                to.member("readings", sure.readings());
            });
        });
    }

    private static <T> void list(JsonWriter json, String name, List<T> items, BiConsumer<JsonWriter, T> item) {
        json.list(name, items, each -> json.object(() -> item.accept(json, each)));
    }
}
