package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.benchwright.language.SourceText;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ReadText;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.junit.jupiter.api.Test;

import com.google.inject.Injector;

/**
 * The measurement itself, on a small library that it must find without errors; how fast is for {@code releng/check-speed}, which asks for
 * larger ones by {@code benchwright.speed.files} and {@code .report}: a machine that does other things meanwhile must not fail a build.
 */
class CheckSpeedTest {

    private static final int STEPS = 100;
    private static final Injector LANGUAGE = new ProcedureIdeSetup().createInjectorAndDoEMFRegistration();

    @Test
    void aLibraryWithoutErrorsIsMeasured() throws IOException {
        List<String> lines = new ArrayList<>(List.of("files   steps  parse+link  check   ratio  ms per step"));
        String report = System.getProperty("benchwright.speed.report", "");
        List<SourceText> first = library(report.isEmpty() ? 1 : 20);
        check(first);
        link(first);
        for (String size : System.getProperty("benchwright.speed.files", "2").split(",")) {
            int files = Integer.parseInt(size);
            List<SourceText> texts = library(files);
            double linked = seconds(() -> link(texts));
            double checked = seconds(() -> check(texts));
            assertTrue(linked > 0 && checked > 0, lines::toString);
            lines.add(String.format(Locale.ROOT, "%5d %7d %9.2f s %6.2f s %6.2f %8.3f", files, files * STEPS, linked, checked, checked / linked,
                    1000 * checked / (files * STEPS)));
        }
        if (!report.isEmpty()) {
            Files.write(Path.of(report), lines);
        }
    }

    /** The best of three: what disturbs a run only ever makes it longer. */
    private static double seconds(Runnable work) {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < 3; i++) {
            long begin = System.nanoTime();
            work.run();
            best = Math.min(best, (System.nanoTime() - begin) / 1e9);
        }
        return best;
    }

    private static void check(List<SourceText> texts) {
        if (Bench.LANGUAGE.checkTexts(texts).hasErrors()) {
            throw new IllegalStateException("the library has errors");
        }
    }

    private static void link(List<SourceText> texts) {
        XtextResourceSet set = LANGUAGE.getInstance(XtextResourceSet.class);
        for (SourceText text : texts) {
            ParsedFile file = new ParsedFile(LANGUAGE, ReadText.of(text));
            set.getResources().add(file.resource());
            file.parse();
        }
        EcoreUtil.resolveAll(set);
    }

    private static List<SourceText> library(int files) {
        List<SourceText> texts = new ArrayList<>(List.of(new SourceText(Bench.FAMILY_FILE, Bench.FAMILY)));
        for (int file = 0; file < files; file++) {
            StringBuilder steps = new StringBuilder();
            for (int step = 0; step < STEPS - 13; step++) {
                steps.append("        step s").append(step).append(" \"Step\" {\n            mark m").append(step)
                        .append(" \"Press.\"\n            expect pwr steady within 5 s of m").append(step)
                        .append(" or go to read_log\n            measure v").append(step)
                        .append(" with meter, limits 23.5 .. 24.5 V or conclude rejected \"Off.\"\n        }\n");
            }
            String text = Bench.PROCEDURE.replace("lark_acceptance", "lark_acceptance_" + file).replace("lasting at most 10 min", "")
                    .replace("        step fit \"Fit", steps + "        step fit \"Fit");
            texts.add(new SourceText(Bench.FOLDER.resolve("p" + file + ".procedure"), text));
        }
        return texts;
    }
}
