package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.benchwright.present.HelpPage;
import org.junit.jupiter.api.Test;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/** What is written for other programs has no column and no member that the page about it does not name. */
class ExportsPageTest extends OnAnApprovedBench {

    /** Where counts and times stand under the verdict's own word. */
    private static final Set<String> VERDICTS = Set.of("accepted", "rejected", "undecided");
    private static final String DEMO = Path.of("../../procedures").toAbsolutePath().normalize().toString();

    private final String page = HelpPage.EXPORTS.text();

    private void named(Set<String> names) {
        assertEquals(Set.of(), new TreeSet<>(names.stream().filter(name -> !page.contains("`" + name + "`")).toList()));
    }

    private static Set<String> members(JsonElement json) {
        Set<String> names = new TreeSet<>();
        if (json instanceof JsonObject object) {
            object.entrySet().stream().filter(each -> !VERDICTS.contains(each.getKey())).forEach(each -> names.add(each.getKey()));
            object.entrySet().forEach(each -> names.addAll(members(each.getValue())));
        } else if (json instanceof JsonArray array) {
            array.forEach(each -> names.addAll(members(each)));
        }
        return names;
    }

    private Set<String> members(String file) throws Exception {
        Set<String> names = members(JsonParser.parseString(Files.readString(folder.resolve(file))));
        assertTrue(names.size() > 4, file + ": " + names);
        return names;
    }

    private Set<String> headings(String file) throws Exception {
        String first = Files.readString(folder.resolve(file)).lines().findFirst().orElseThrow();
        Set<String> names = new TreeSet<>(Stream.of(first.split(",")).map(cell -> cell.replace("\"", "")).toList());
        assertTrue(names.size() > 4, first);
        return names;
    }

    private void done(String... command) {
        CommandRunner.Ended ended = bench.onLedger(command);
        assertEquals("", ended.err());
    }

    @Test
    void ofATest() throws Exception {
        String test = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        done("report", test, "--json", "r.json", "--csv", "r.csv");
        done("export", "--csv", "e.csv", "--json", "e.json");
        named(members("r.json"));
        named(members("e.json"));
        named(headings("r.csv"));
        named(headings("e.csv"));
        String rehearsed = bench.rehearse(SampleProcedure.GOOD).test();
        done("report", rehearsed, "--json", "w.json");
        named(members("w.json"));
    }

    @Test
    void ofWhatWaitsAndOfTestsBesideEachOther() throws Exception {
        String first = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        String second = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        done("departures", "--csv", "d.csv", "--json", "d.json");
        done("compare", second, "--with", first, "--csv", "c.csv");
        done("impact", "M-17", "--reads", "0.1 V too high", "--from", "2026-03-01", "--to", "2026-12-31", "--csv", "i.csv");
        named(headings("d.csv"));
        assertEquals(headings("d.csv"), members("d.json"));
        named(headings("c.csv"));
        named(headings("i.csv"));
    }

    @Test
    void ofWhatAProcedureProves() throws Exception {
        for (String procedure : new String[] {"tarn-c16-acceptance", "tarn-a8-acceptance"}) {
            CommandRunner.Ended ended = bench.run("what-it-proves", DEMO + "/" + procedure + ".procedure", "--json", "--soak", "96");
            assertEquals(0, ended.status(), ended.err());
            named(members(JsonParser.parseString(ended.out())));
        }
    }
}
