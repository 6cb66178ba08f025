package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.benchwright.cli.internal.LanguageSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The tutorials hold word by word: whoever begins with an empty folder and does what they say sees what they show. */
class TutorialTest {

    private static final Path TUTORIALS = Path.of("../../docs/tutorials").toAbsolutePath().normalize();
    /** In the order in which each builds on the ones before. */
    private static final List<String> ORDER = List.of("test-engineer.md", "technician.md", "auditor.md", "bench-owner.md");

    @TempDir
    private Path folder;

    @Test
    void everyTutorialHoldsFromAnEmptyFolderOn() throws Exception {
        TutorialWalk walk = new TutorialWalk(folder);
        try {
            for (String page : ORDER) {
                walk.walk(TUTORIALS.resolve(page));
            }
        } finally {
            Files.writeString(Files.createDirectories(Path.of("target")).resolve("tutorials.txt"), walk.log());
        }
    }

    /** A soak of minutes, for whoever wants to see the whole story in one sitting: the page says which words become which. */
    @Test
    void theProcedureIsInOrderWithMinutesForHoursToo() throws Exception {
        Path page = TUTORIALS.resolve("test-engineer.md");
        CommandRunner bench = new CommandRunner(folder).with(new LanguageSource());
        Path texts = Files.createDirectories(bench.folder().resolve("r8"));
        for (TutorialPage.Deed deed : TutorialPage.deeds(page)) {
            if (deed instanceof TutorialPage.Writes file) {
                Files.writeString(bench.folder().resolve(file.name()), inMinutes(page, file.text()).replace(" of from ", " off from "));
            }
        }
        CommandRunner.Ended checked = bench.run("check", texts.toString());
        assertEquals("2 files checked: 0 errors, 0 warnings.", (checked.out() + checked.err()).strip());
        assertTrue(bench.run("what-it-proves", texts.resolve("tarn-r8-acceptance.procedure").toString()).out().contains("\"Endurance\", 4 min: "));
    }

    private static String inMinutes(Path page, String text) throws IOException {
        String words = Files.readString(page);
        String changed = text;
        for (Map.Entry<String, String> each : Map.of("a fault stopping it every 1 h", "a fault stopping it every 1 min", "lasting 4 h", "lasting 4 min",
                "look every 2 h, tolerance 15 min", "look every 2 min, tolerance 15 s", "gap at most 10 min", "gap at most 1 min").entrySet()) {
            assertTrue(words.contains("`" + each.getValue() + "`"), "the page says it: " + each.getValue());
            changed = changed.replace(each.getKey(), each.getValue());
        }
        return changed;
    }

    @Test
    void noneIsLeftOutAndEachHasSomethingToDo() throws IOException {
        try (Stream<Path> files = Files.list(TUTORIALS)) {
            assertEquals(new TreeSet<>(ORDER), new TreeSet<>(files.map(file -> file.getFileName().toString()).toList()));
        }
        for (String page : ORDER) {
            long commands = TutorialPage.deeds(TUTORIALS.resolve(page)).stream().filter(TutorialPage.Commands.class::isInstance).count();
            assertTrue(commands >= 4, page + " has " + commands + " commands");
        }
    }
}
