package org.benchwright.report.internal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
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
        return written(object());
    }

    /** Many reports as an array of one file. */
    public static String all(List<TestReport> reports) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        reports.forEach(each -> array.add(new ReportJson(each).object()));
        return written(array);
    }

    private ObjectNode object() {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("format", FORMAT).put("number", report.number());
        report.replaces().ifPresent(old -> json.put("replaces", old));
        heading(json, report.heading());
        standing(json, report.standing());
        list(json, "results", report.results(), ReportJson::result);
        texts(json, "soaks", report.soaks());
        list(json, "instruments", report.instruments(), (to, each) -> to.put("name", each.name()).put("asset", each.asset())
                .put("uncertainty", each.uncertainty()).put("due", each.due()));
        texts(json, "departures", report.departures());
        texts(json, "nonconformities", report.nonconformities());
        list(json, "attachments", report.attachments(),
                (to, each) -> to.put("name", each.name()).put("what", each.what()).put("sha256", each.digest()));
        list(json, "amendments", report.amendments(), (to, each) -> to.put("sequence", String.valueOf(each.sequence()))
                .put("instant", each.instant().toString()).put("kind", each.kind()).put("by", each.by()).put("words", each.words()));
        list(json, "story", report.story(), (to, each) -> to.put("sequence", String.valueOf(each.sequence()))
                .put("instant", each.instant().toString()).put("who", each.who()).put("words", each.words()).put("struck", each.struck()));
        return json;
    }

    private static void heading(ObjectNode json, TestReport.Heading heading) {
        json.put("test", heading.test()).put("rehearsal", heading.rehearsal()).put("sealed", heading.sealed());
        heading.verdict().ifPresent(word -> json.put(heading.rehearsal() ? "wouldBe" : "verdict", word));
        json.put("reason", heading.reason()).put("serial", heading.serial()).put("family", heading.family());
        json.put("procedure", heading.procedure()).put("revision", String.valueOf(heading.revision())).put("procedureText", heading.text());
        heading.approval().ifPresent(approval -> json.put("preparedBy", approval.preparedBy()).put("approvedBy", approval.approvedBy())
                .put("approved", approval.instant().toString()));
        json.put("station", heading.station()).put("software", heading.software());
        texts(json, "technicians", heading.technicians());
        json.put("opened", heading.opened().toString());
        heading.concluded().ifPresent(end -> json.put("concluded", end.toString()));
        heading.predecessor().ifPresent(before -> json.put("predecessor", before));
        heading.arrival().ifPresent(arrival -> json.put("receipt", arrival.receipt()).put("received", arrival.received().toString())
                .put("order", arrival.order()).put("owner", arrival.owner()).put("plate", arrival.plate()).put("complaint", arrival.complaint())
                .put("damage", arrival.damage()).put("preserve", arrival.preserve()));
        if (!heading.repairs().isEmpty()) {
            texts(json, "repairs", heading.repairs());
        }
    }

    private static void standing(ObjectNode json, TestReport.Standing standing) {
        if (!standing.words().isEmpty()) {
            json.put("standing", standing.words());
        }
        standing.end().ifPresent(end -> json.put("ended", end.word()).put("endedWords", end.words()));
        list(json, "corrections", standing.corrections(), (to, each) -> {
            to.put("event", String.valueOf(each.event())).put("first", each.first()).put("right", each.right()).put("reason", each.reason())
                    .put("by", each.by());
            texts(to, "decided", each.decided());
        });
    }

    private static void result(ObjectNode to, TestReport.Result result) {
        to.put("step", result.step()).put("what", result.what()).put("outcome", result.outcome()).put("words", result.words());
        result.numbers().ifPresent(numbers -> {
            to.put("rule", numbers.rule()).put("value", numbers.value()).put("limits", numbers.limits())
                    .put("uncertainty", numbers.uncertainty()).put("margin", numbers.margin());
            numbers.certainty().ifPresent(sure -> to.put("guardBand", sure.guardBand()).put("conformance", sure.conformance())
                    .put("falseAccept", sure.falseAccept()).put("readings", sure.readings()));
        });
    }

    private static void texts(ObjectNode json, String name, List<String> texts) {
        texts.forEach(json.putArray(name)::add);
    }

    private static <T> void list(ObjectNode json, String name, List<T> items, BiConsumer<ObjectNode, T> item) {
        ArrayNode array = json.putArray(name);
        items.forEach(each -> item.accept(array.addObject(), each));
    }

    /** Half a character has no UTF-8: a text with one is written in escapes, so that nothing is lost. */
    private static String written(JsonNode json) {
        String text = written(json, false);
        return StandardCharsets.UTF_8.newEncoder().canEncode(text) ? text : written(json, true);
    }

    private static String written(JsonNode json, boolean escaped) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(
                Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER));
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        try {
            return JsonMapper.builder().configure(JsonWriteFeature.ESCAPE_NON_ASCII, escaped).build().writer(printer)
                    .writeValueAsString(json) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of texts can be written", e);
        }
    }
}
