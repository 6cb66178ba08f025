package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

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
