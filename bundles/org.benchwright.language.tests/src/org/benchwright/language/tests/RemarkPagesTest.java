package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every code has a page; its example earns that remark and no other, and the mended one earns none. */
class RemarkPagesTest {

    private static final Path FOLDER = Path.of("../org.benchwright.language/docs/remarks");
    /** What no text by itself can earn. */
    private static final Set<RemarkCode> WITHOUT_EXAMPLE = EnumSet.of(RemarkCode.CANNOT_READ, RemarkCode.FILE_TOO_LARGE,
            RemarkCode.NOT_UTF_8, RemarkCode.NESTED_TOO_DEEP, RemarkCode.INSPECTION_FAILED, RemarkCode.MORE_REMARKS,
            RemarkCode.UNKNOWN_NAME, RemarkCode.FAMILY_NOT_CHOSEN);

    static Stream<RemarkCode> codes() {
        return Stream.of(RemarkCode.values());
    }

    static Stream<RemarkPage> pagesWithExamples() {
        return codes().filter(code -> !WITHOUT_EXAMPLE.contains(code)).map(RemarkPage::of);
    }

    @ParameterizedTest
    @MethodSource("codes")
    void aCodeHasAPage(RemarkCode code) {
        RemarkPage page = RemarkPage.of(code);
        assertTrue(page.text().startsWith("# " + code.word() + "\n"), page::text);
        assertEquals(!WITHOUT_EXAMPLE.contains(code), page.hasExamples());
    }

    @Test
    void theFramesThemselvesEarnNothing() {
        assertEquals(List.of(), Bench.printed(Bench.LANGUAGE.checkTexts(RemarkPage.emptyFrames(), RemarkPage.APPROVED)
                .remarks()));
    }

    @ParameterizedTest
    @MethodSource("pagesWithExamples")
    void theExampleEarnsTheRemarkAndNoOther(RemarkPage page) {
        List<Remark> remarks = Bench.LANGUAGE.checkTexts(page.bad(), RemarkPage.APPROVED).remarks();
        assertEquals(Set.of(page.code()), remarks.stream().map(Remark::code)
                .collect(Collectors.toSet()), () -> Bench.printed(remarks).toString());
    }

    @ParameterizedTest
    @MethodSource("pagesWithExamples")
    void theMendedExampleEarnsNothingAndCanBeCarriedOut(RemarkPage page) {
        Checked checked = Bench.LANGUAGE.checkTexts(page.good(), RemarkPage.APPROVED);
        assertEquals(List.of(), Bench.printed(checked.remarks()));
        SoundPlans.of(checked);
    }

    @Test
    void thereIsNoPageForAnythingElseAndTheListIsComplete() throws IOException {
        Set<String> expected = codes().map(RemarkCode::word).collect(Collectors.toCollection(TreeSet::new));
        try (Stream<Path> files = Files.list(FOLDER)) {
            Set<String> there = files.map(file -> file.getFileName().toString().replace(".md", ""))
                    .filter(name -> !name.equals("README"))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(expected, there);
        }
        Set<String> listed = Files.readAllLines(FOLDER.resolve("README.md")).stream().filter(line -> line.startsWith("| ["))
                .map(line -> line.replaceAll("^\\| \\[([a-z0-9-]+)\\]\\(\\1\\.md\\) \\| (\\w+) .*$", "$1 $2"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(codes().map(code -> code.word() + " " + code.severity().word())
                .collect(Collectors.toCollection(TreeSet::new)), listed);
    }}
