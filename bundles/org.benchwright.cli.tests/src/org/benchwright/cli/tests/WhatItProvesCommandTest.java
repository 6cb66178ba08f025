package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/** What procedures prove, in the terminal. */
class WhatItProvesCommandTest extends OnABench {

    private static final Path DEMO = Path.of("../../procedures").toAbsolutePath().normalize();

    private CommandRunner.Ended prove(String file, String... more) {
        String[] arguments = new String[more.length + 2];
        arguments[0] = "what-it-proves";
        arguments[1] = DEMO.resolve(file).toString();
        System.arraycopy(more, 0, arguments, 2, more.length);
        return bench.run(arguments);
    }

    @ParameterizedTest
    @ValueSource(strings = {"known-good-unit", "tarn-a8-acceptance", "tarn-c16-acceptance", "tarn-c16-retest", "tarn-p24-acceptance"})
    void everyDemoProcedureIsToldInEightyColumns(String name) {
        CommandRunner.Ended ended = prove(name + ".procedure", "--soak", "96");
        assertEquals(0, ended.status(), ended.err());
        assertEquals("", ended.err());
        assertTrue(ended.out().lines().allMatch(line -> line.length() <= 80), ended.out());
        for (String title : new String[] {"Flow", "Times", "Faults", "Risks of measurements", "Soak"}) {
            assertTrue(ended.out().lines().anyMatch(title::equals), title);
        }
    }

    @Test
    void theMainFiguresAreSaid() {
        String said = prove("tarn-c16-acceptance.procedure", "--soak", "96").said();
        assertTrue(said.startsWith("C16 acceptance on the bench, revision 1"), said);
        assertTrue(said.contains("21 steps and 1 soak;"), said);
        assertTrue(said.contains("Typically 73 h 19 min on the bench, 1 h 19 min of them attended; ends accepted."), said);
        assertTrue(said.contains("With 96 h: 90 % for any fault at least once in 41 h 41 min; a fault every 31 h stays hidden with 4.6 %."), said);
        assertTrue(said.contains("24 h more of the station"), said);
    }

    @Test
    void machinesGetAllOfIt() {
        JsonObject proof = JsonParser.parseString(prove("tarn-a8-acceptance.procedure", "--json").out()).getAsJsonObject().getAsJsonArray("procedures")
                .get(0).getAsJsonObject();
        assertEquals("a8_acceptance", proof.get("name").getAsString());
        assertEquals(35, proof.getAsJsonObject("paths").get("count").getAsInt());
        assertEquals(35, proof.getAsJsonObject("paths").getAsJsonArray("listed").size());
        assertEquals("PT1H51M", proof.getAsJsonObject("times").getAsJsonObject("typical").get("bench").getAsString());
        assertEquals(0.0227501, proof.getAsJsonArray("measurements").get(0).getAsJsonObject().get("acceptsBeyondLimit").getAsDouble(), 1e-7);
        assertTrue(proof.getAsJsonObject("flow").getAsJsonArray("ways").size() > 20);
    }

    @Test
    void brokenTextsAreRefusedWithTheirErrors() throws IOException {
        Files.writeString(folder.resolve("broken.procedure"), "procedure p \"P\" revision 1 { applies to nothing }");
        CommandRunner.Ended ended = bench.run("what-it-proves", "broken.procedure");
        assertEquals(1, ended.status());
        assertTrue(ended.out().startsWith("broken.procedure:1:"), ended.out());
        assertTrue(ended.err().contains("can't be told until"), ended.err());
        assertEquals(2, bench.run("what-it-proves", "missing.procedure").status());
        Files.writeString(folder.resolve("only.family"), "family jay \"Jay\" { }");
        CommandRunner.Ended none = bench.run("what-it-proves", "only.family");
        assertEquals(1, none.status());
        assertTrue(none.err().contains("holds no procedure"), none.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"-5", "0", "long", "5 V", "99999"})
    void aLengthThatIsNoneIsRefused(String length) {
        CommandRunner.Ended ended = prove("tarn-c16-acceptance.procedure", "--soak=" + length);
        assertEquals(1, ended.status());
        assertTrue(ended.err().contains("is no length of a soak"), ended.err());
        assertFalse(ended.out().contains("Flow"));
    }

    @Test
    void aLengthMayBeATimeToo() {
        assertTrue(prove("known-good-unit.procedure", "--soak", "1.5").said().contains("With 1 h 30 min:"));
        assertTrue(prove("known-good-unit.procedure", "--soak", "90 min").said().contains("With 1 h 30 min:"));
    }
}
