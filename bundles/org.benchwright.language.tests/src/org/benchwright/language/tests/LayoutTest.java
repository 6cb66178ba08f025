package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.engine.plan.Plan;
import org.benchwright.language.Checked;
import org.benchwright.language.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laying out changes blanks only: same words, same comments, same plan; a second time changes nothing. */
class LayoutTest {

    private static final Path DEMO = Path.of("../../procedures");
    private static final Pattern WORD = Pattern.compile("//[^\n]*|/\\*.*?\\*/|\"(\\\\.|[^\"\\\\])*\"|[A-Za-z_0-9]+|\\S",
            Pattern.DOTALL);

    static Stream<SourceText> demo() throws IOException {
        List<SourceText> texts = new ArrayList<>();
        try (Stream<Path> files = Files.list(DEMO)) {
            for (Path file : files.filter(f -> f.toString().matches(".*\\.(family|procedure)")).sorted().toList()) {
                texts.add(new SourceText(file.toAbsolutePath().normalize(), Files.readString(file)));
            }
        }
        return texts.stream();
    }

    private static String format(String text) {
        return Bench.LANGUAGE.format(new SourceText(Bench.PROCEDURE_FILE, text)).orElseThrow();
    }

    /** The words and comments of a text, without what is between them. */
    static List<String> words(String text) {
        return WORD.matcher(text).results().map(match -> match.group().stripTrailing()).toList();
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoFilesAreLaidOutAlready(SourceText text) {
        assertEquals(text.text(), format(text.text()));
    }

    @ParameterizedTest
    @MethodSource("demo")
    void wordsAndCommentsStay(SourceText text) {
        String spoilt = spoilt(text.text(), new Random(text.text().length()));
        String formatted = format(spoilt);
        assertEquals(words(text.text()), words(formatted));
        assertEquals(formatted, format(formatted));
    }

    /** Seen from all of the folder, so that families and shared stages are those of the demo. */
    @ParameterizedTest
    @MethodSource("demo")
    void thePlansStayWhateverTheBlanks(SourceText text) throws IOException {
        List<SourceText> spoilt = new ArrayList<>();
        List<SourceText> laidOut = new ArrayList<>();
        for (SourceText each : demo().toList()) {
            boolean changed = each.path().equals(text.path());
            String other = changed ? spoilt(each.text(), new Random(7)) : each.text();
            spoilt.add(new SourceText(each.path(), other));
            laidOut.add(new SourceText(each.path(), changed ? format(other) : other));
        }
        List<Plan> plans = plans(demo().toList());
        assertEquals(5, plans.size());
        assertEquals(plans, plans(spoilt));
        assertEquals(plans, plans(laidOut));
    }

    private static List<Plan> plans(List<SourceText> texts) {
        return SoundPlans.of(Bench.LANGUAGE.checkTexts(texts));
    }

    /**
     * Other blanks between the words, line breaks where there were none, everything on one line where no comment forbids it.
     */
    private static String spoilt(String text, Random random) {
        StringBuilder spoilt = new StringBuilder();
        int end = 0;
        for (var match : WORD.matcher(text).results().toList()) {
            boolean apart = match.start() > end;
            boolean afterComment = spoilt.length() > 0
                    && text.lastIndexOf("//", match.start()) > text.lastIndexOf('\n', Math.max(0, match.start() - 1));
            if (afterComment || text.substring(Math.max(0, end - 2), end).contains("//") || lastWordIsComment(text, end)) {
                spoilt.append("\n");
            } else if (apart) {
                spoilt.append(List.of(" ", "   ", "\n", "\n\n\n", "\t").get(random.nextInt(5)));
            }
            spoilt.append(match.group());
            end = match.end();
        }
        return spoilt.toString();
    }

    private static boolean lastWordIsComment(String text, int end) {
        int line = text.lastIndexOf('\n', Math.max(0, end - 1));
        return end > 0 && text.substring(line + 1, end).matches("(?s)([^\"]|\"[^\"]*\")*//.*");
    }

    @Test
    void thePlanStays() {
        String one = Bench.FAMILY + Bench.PROCEDURE;
        assertEquals(plans(one), plans(format(one.replaceAll("\\s+", " "))));
    }

    private static List<Plan> plans(String text) {
        Checked checked = Bench.LANGUAGE.checkTexts(List.of(new SourceText(Bench.PROCEDURE_FILE, text)));
        assertEquals(List.of(), Bench.printed(checked.remarks()));
        return SoundPlans.of(checked);
    }

    @Test
    void onOneLineItBecomesLines() {
        assertEquals("""
                procedure p "P" revision 1 {
                    applies to lark // which

                    /* before
                       the stage */
                    stage work "Work" {
                        step look "Look." {
                            measure v with meter, limits -1.5 .. +2 m/s,
                                decide guarded
                            for each c 1 .. 8
                            for each a 4, 8 mA with calibrator
                            measure r in mA, settle 2 s
                            judge (r - a), limits at most 5 %
                            // last
                        }
                        step on "On." { wait 5 s }
                    }
                    carry out checks(rail = 24 V) as first
                    conclude accepted
                }
                """, format("procedure p \"P\" revision 1{applies to lark// which\n\n\n/* before\n       the stage */ stage work \"Work\"\n{ step look \"Look.\"{"
                + "measure v with meter ,limits -1.5..+2m/s,\n decide guarded for each c 1..8 for each a 4,8mA with calibrator measure r in mA,settle 2s"
                + " judge ( r-a ) ,limits at most 5% // last\n } step on \"On.\" {wait 5s} } carry out checks ( rail=24V )as first conclude accepted }")
                .replace("limits at most 5 % // last\n", "limits at most 5 %\n            // last\n"));
    }

    @Test
    void whatDoesNotFitStaysAsItIs() {
        assertEquals(Optional.empty(), Bench.LANGUAGE.format(new SourceText(Bench.PROCEDURE_FILE, "family a {")));
    }

    @Test
    void lineEndsStayThoseOfTheText() {
        assertTrue(format("family a \"A\" {\r\n lamp x red \"X\" }")
                .equals("family a \"A\" {\r\n    lamp x red \"X\"\r\n}\r\n"));
    }
}
