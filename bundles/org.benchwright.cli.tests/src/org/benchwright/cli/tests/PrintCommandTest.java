package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * {@code bench print}. The demo procedures as they are printed are kept word by word in {@code printed/}; what was found instead is left in
 * {@code target/printed}.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PrintCommandTest {

    private static final Path PROCEDURES = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final Path KEPT = Path.of("src", "org", "benchwright", "cli", "tests", "printed");

    private final ProcedureReader procedures = new ProcedureReader(LanguageServices.create());

    @TempDir
    private Path folder;

    Stream<String> demo() throws IOException {
        try (Stream<Path> files = Files.list(PROCEDURES)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".procedure")).sorted().toList().stream();
        }
    }

    private CommandRunner.Ended print(String... arguments) throws IOException {
        return new CommandRunner(folder).with(procedures::read).run(Stream.concat(Stream.of("print"), Stream.of(arguments)).toArray(String[]::new));
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoReadsAsItIsKept(String name) throws IOException {
        CommandRunner.Ended ended = print(PROCEDURES.resolve(name).toString());

        assertEquals(0, ended.status(), ended.err());
        String kept = name.replace(".procedure", ".txt");
        Files.writeString(Files.createDirectories(Path.of("target", "printed")).resolve(kept), ended.out());
        assertEquals(Files.readString(KEPT.resolve(kept)), ended.out());
    }

    @ParameterizedTest
    @MethodSource("demo")
    void noLineIsLongerThanATerminal(String name) throws IOException {
        List<String> longer = print(PROCEDURES.resolve(name).toString()).done().out().lines().filter(line -> line.length() > 80).toList();

        assertEquals(List.of(), longer);
    }

    @Test
    void asFilesInsteadOfLines() throws IOException {
        CommandRunner.Ended ended = print(PROCEDURES.resolve("tarn-c16-acceptance.procedure").toString(), "--pdf", "c16.pdf", "--html", "c16.html");

        assertEquals(0, ended.status(), ended.err());
        assertEquals(2, ended.out().lines().filter(line -> line.startsWith("Written: ")).count(), ended.out());
        assertTrue(new String(Files.readAllBytes(folder.resolve("c16.pdf")), StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        String html = Files.readString(folder.resolve("c16.html"));
        assertTrue(html.contains("<div class=\"panel danger\"><b>DANGER</b>"), html);
        assertTrue(html.contains("<p class=\"strong\">CHANGE NOTHING YET. RECORD WHAT CAME IN.</p>"), html);
    }

    @Test
    void whatHasToBeMendedFirstIsSaid() throws IOException {
        Path broken = Files.writeString(folder.resolve("broken.procedure"), "procedure p \"P\" revision 1 {\n    applies to nobody\n}\n");

        CommandRunner.Ended ended = print(broken.toString());

        assertEquals(1, ended.status());
        assertEquals("", ended.out());
        assertTrue(ended.err().contains("broken.procedure:2:16:") && ended.err().contains("unknown-family"), ended.err());
    }

    @Test
    void aFileThatIsNotThereIsSaidToBe() throws IOException {
        CommandRunner.Ended ended = print("nowhere.procedure");

        assertEquals(2, ended.status());
        assertTrue(ended.err().contains("nowhere.procedure"), ended.err());
    }

    @Test
    void aPaperThatCannotBeWrittenIsSaidToBe() throws IOException {
        CommandRunner.Ended ended = print(PROCEDURES.resolve("known-good-unit.procedure").toString(), "--pdf", "no/such/folder/a.pdf");

        assertEquals(2, ended.status());
        assertTrue(ended.err().contains("a.pdf"), ended.err());
    }
}
