package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.RemarkPages;
import org.benchwright.present.HelpPage;
import org.benchwright.present.ManualFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The manual at the terminal: the pages of {@code docs}, all of them, as they come with the program. */
class HelpCommandTest extends OnABench {

    private static final Path DOCS = Path.of("../../docs");

    @ParameterizedTest
    @EnumSource
    void aPageIsPrintedAndListed(HelpPage page) throws IOException {
        CommandRunner.Ended ended = bench.run("help", page.word());
        assertEquals(new CommandRunner.Ended(0, Files.readString(DOCS.resolve(page.path())).replaceAll("(?s)<!--.*?-->\\n*", ""), ""), ended);
        assertTrue(bench.run("help").out().contains("  " + page.word() + " "), page.word());
    }

    @Test
    void noPageIsForgotten() throws IOException {
        assertEquals(new TreeSet<>(Stream.concat(pages(DOCS), pages(DOCS.resolve("tutorials"))).collect(Collectors.toSet())),
                new TreeSet<>(Stream.of(HelpPage.values()).map(HelpPage::path).collect(Collectors.toSet())));
    }

    private static Stream<String> pages(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<String> there = files.filter(file -> file.toString().endsWith(".md")).map(file -> DOCS.relativize(file).toString().replace('\\', '/')).toList();
            return there.stream();
        }
    }

    /** The window shows them; what is not in the program would be a gap on the page. */
    @Test
    void everyPictureOfAPageComesWithTheProgram() throws IOException {
        int pictures = 0;
        for (HelpPage page : HelpPage.values()) {
            for (Matcher picture = Pattern.compile("!\\[[^\\]]*]\\(([^)]+)\\)").matcher(page.text()); picture.find();) {
                Path file = Path.of("docs").resolve(page.path()).resolveSibling(picture.group(1)).normalize();
                assertTrue(ManualFile.picture(file.toString().replace('\\', '/')).isPresent(), page + " shows " + file);
                pictures++;
            }
        }
        assertTrue(pictures > 8, pictures + " pictures");
    }

    /** The two pages about the source may point to it; those of the manual lead where the window can follow. */
    @Test
    void everyLinkOfAPageLeadsToAPageOfTheProgram() {
        int links = 0;
        for (HelpPage page : HelpPage.values()) {
            for (Matcher link = Pattern.compile("[^!]\\[[^\\]]*]\\(([^)#]+)[^)]*\\)").matcher(page.text()); link.find();) {
                String file = Path.of("docs").resolve(page.path()).resolveSibling(link.group(1)).normalize().toString().replace('\\', '/');
                assertTrue(ManualFile.text(file).or(() -> RemarkPages.at(file)).isPresent(), page + " leads to " + file);
                links++;
            }
        }
        assertTrue(links > 50, links + " links");
    }

    @Test
    void decisionsComeWithTheProgramAndNothingElseDoes() {
        assertTrue(ManualFile.text("docs/decisions/0120-the-manual-comes-with-the-program.md").isPresent());
        assertTrue(ManualFile.text("README.md").isPresent());
        assertTrue(ManualFile.text("docs/decisions").isEmpty());
        assertTrue(ManualFile.text("docs/no-such-page.md").isEmpty());
    }

    @Test
    void aRemarkHasItsPageToo() {
        CommandRunner.Ended ended = bench.run("help", "soak-while-off");
        assertEquals(0, ended.status(), ended.err());
        assertTrue(ended.out().startsWith("# soak-while-off\n"), ended.out());
    }

    /** Each page of a remark refers to the frame of its example, which stands with the list. */
    @Test
    void theListOfRemarksIsATopic() throws IOException {
        assertTrue(bench.run("help").out().contains("  remarks              Remarks\n"));
        assertEquals(new CommandRunner.Ended(0, Files.readString(DOCS.resolve("remarks/README.md")), ""), bench.run("help", "remarks"));
    }

    @Test
    void whatThereIsNotIsSaid() {
        CommandRunner.Ended ended = bench.run("help", "poetry");
        assertEquals(1, ended.status());
        assertTrue(ended.err().startsWith("There is no page \"poetry\"."), ended.err());
        assertFalse(ended.err().contains("at org."), ended.err());
    }
}
