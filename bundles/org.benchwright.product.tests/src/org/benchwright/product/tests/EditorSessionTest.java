package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real editor with its own client of the protocol gets from the product what the window's editor shows. */
class EditorSessionTest {

    private static final long LIMIT_SECONDS = 600;

    private static final String FAMILY = """
            family wren "Wren" {
                lamp pwr marked "PWR" green "Power"
                lamp flt marked "FLT" red "Fault"
            }
            """;
    private static final String PROCEDURE = """
            procedure look "Look" revision 1 {
                applies to wren
                stage work "Work" {
                    step lamps "Look." {
                        mark now "Press."
                      expect   pwer steady within 5 s of now or conclude rejected "Dark."
                        expect flt off from 5 s of now or conclude rejected "Fault."
                    }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    @TempDir
    Path folder;

    @Test
    void anEditorIsServed() throws IOException, InterruptedException {
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        Files.writeString(folder.resolve("look.procedure"), PROCEDURE);
        assertEquals(List.of("remarks=unknown-lamp", "fix=Write 'pwr'", "remarks=", "offers pwr=true", "offers a keyword=true",
                "hover=Lamp pwr: Power / Marked \"PWR\". / Colour: green. / Declared by family wren. / Used once in this folder.",
                "declared in=wren.family", "references=2",
                "contents=Look, revision 1", "folds=region 0-11,region 2-8,region 3-7", "colours=0", "refused=yes", "renames in files=2",
                "laid out=            expect pwr steady within 5 s of now or conclude rejected \"Dark.\"", "laid out again=0", "remarks=",
                "stopped=true"), sitting());
    }

    private List<String> sitting() throws IOException, InterruptedException {
        Path script = Path.of("src", "org", "benchwright", "product", "tests", "editor-session.lua").toAbsolutePath();
        Path said = folder.resolve("said.txt");
        Path home = Files.createDirectories(folder.resolve("home"));
        ProcessBuilder editor = new ProcessBuilder("nvim", "--headless", "-u", "NONE", "-i", "NONE", "-n", "-c", "luafile " + script)
                .directory(folder.toFile()).redirectErrorStream(true).redirectOutput(folder.resolve("editor.txt").toFile());
        editor.environment().putAll(Map.of("SITTING_OUT", said.toString(), "SITTING_FILE", folder.resolve("look.procedure").toString(),
                "SITTING_FOLDER", folder.toString(), "SITTING_COMMAND", json(command()), "HOME", home.toString(), "XDG_DATA_HOME", home.toString(),
                "XDG_STATE_HOME", home.toString(), "XDG_CACHE_HOME", home.toString()));
        Process process = editor.start();
        if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
        }
        String log = Files.readString(folder.resolve("editor.txt"));
        assertTrue(Files.exists(said), log);
        List<String> lines = Files.readAllLines(said);
        assertTrue(lines.contains("stopped=true"), () -> lines + "\n" + log);
        return lines;
    }

    private List<String> command() throws IOException {
        return new Product(folder).command("lsp");
    }

    private static String json(List<String> words) {
        return words.stream().map(word -> "\"" + word.replace("\\", "\\\\").replace("\"", "\\\"") + "\"").collect(Collectors.joining(",", "[", "]"));
    }
}
