package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/** What a record says of a decision's risk is what the procedure said beforehand, when the instrument is the worst that it tolerates. */
class CertaintyAgreesTest {

    private static final Path DEMO = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final String PROCEDURE = "known-good-unit.procedure";

    @TempDir
    private Path folder;
    private final ProcedureReader procedures = new ProcedureReader(LanguageServices.create());

    private CommandRunner written(int readings) throws IOException {
        CommandRunner bench = new CommandRunner(folder).with(procedures::read);
        for (String family : new String[] {"tarn.family", "tarn-c16.family"}) {
            Files.copy(DEMO.resolve(family), folder.resolve(family));
        }
        String text = Files.readString(DEMO.resolve(PROCEDURE));
        String means = readings == 1 ? "" : "mean of " + readings + " readings, ";
        Files.writeString(folder.resolve(PROCEDURE), text.replace("with meter, limits", "with meter, " + means + "limits"));
        String answers = Files.readString(DEMO.resolve("answers/known-good-accepted.answers"));
        Files.writeString(folder.resolve("test.answers"), answers.replace("0.02 V, k 2", "0.05 V, k 2"));
        return bench;
    }

    private Map<String, JsonObject> decided(CommandRunner bench) throws IOException {
        CommandRunner.Ended ended = bench.run("test", PROCEDURE, "--serial", "C16-000012", "--answers", "test.answers", "--ledger",
                bench.ledger().toString(), "--rehearse");
        assertEquals(0, ended.status(), ended.err());
        String test = ended.test();
        assertEquals(0, bench.run("report", test, "--ledger", bench.ledger().toString(), "--json", "r.json").status());
        return objects(JsonParser.parseString(Files.readString(folder.resolve("r.json"))).getAsJsonObject().getAsJsonArray("results"))
                .filter(result -> result.has("falseAccept")).collect(Collectors.toMap(result -> result.get("what").getAsString(), result -> result));
    }

    private static Stream<JsonObject> objects(Iterable<JsonElement> elements) {
        Stream.Builder<JsonObject> objects = Stream.builder();
        elements.forEach(element -> objects.add(element.getAsJsonObject()));
        return objects.build();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void theRiskOnRecordIsTheOneThatWasTold(int readings) throws Exception {
        CommandRunner bench = written(readings);
        JsonObject proof = JsonParser.parseString(bench.run("what-it-proves", PROCEDURE, "--json").out()).getAsJsonObject()
                .getAsJsonArray("procedures").get(0).getAsJsonObject();
        Map<String, String> told = new LinkedHashMap<>();
        objects(proof.getAsJsonArray("measurements")).forEach(each -> told.put(each.get("name").getAsString().replace('_', ' '),
                String.format(Locale.ROOT, "%.2f %%", 100 * each.get("acceptsBeyondLimit").getAsDouble())));
        assertEquals(4, told.size(), told.toString());
        Map<String, String> recorded = new LinkedHashMap<>();
        decided(bench).forEach((what, result) -> recorded.put(what, result.get("falseAccept").getAsString()));
        assertEquals(told, recorded);
    }
}
