package org.benchwright.language.tests;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** What somebody who types may do to a text. */
final class RandomEdits {

    private static final List<String> PIECES = List.of("", "", "x", " ", "\n", "}", "{", "\"", "/*", "*/", "//", "pwr",
            "lark", "lark_base", "run", "mark on \"On\"",
            "family lark \"L\" {}", "like lark_base", "steady", "step", "(", "1", "-", "%");
    private static final List<String> LINES = List.of("mark m7 \"Press.\"",
            "expect pwr steady within 5 s of m7 or go to s3", "energises supply",
            "measure v5 with meter, limits 20 .. 21 V or conclude rejected \"Off.\"",
            "confirm \"Well { so\" or go to nowhere", "isolates supply // } done",
            "derive d9 as v9 - v8, limits 0 .. 1 A or go to s9", "erase only fault_log", "otherwise go to read_log",
            "wait 5 V", "/* not { now */ wait 5 min",
            "step extra \"Extra\" { confirm \"Yes.\" or conclude rejected \"No.\" }",
            "expect any of { ok red steady, flt off } within 3 s of m8",
            "reveals W01", "enter fault_log", "take", "}",
            "for each channel 1 .. 3 measure shown in V judge shown, limits 0 .. 1 V or go to s2");

    private final Random random;

    RandomEdits(long seed) {
        random = new Random(seed);
    }

    boolean sometimes() {
        return random.nextInt(4) == 0;
    }

    <T> T oneOf(List<T> some) {
        return some.get(random.nextInt(some.size()));
    }

    /**
     * Mostly small, sometimes the declaration of a family under another name, so that other files lose and find it again.
     */
    String anywhere(String text) {
        if (sometimes()) {
            return text.contains("family lark_base") ? text.replace("family lark_base", "family lark_basic")
                    : text.replace("family lark_basic", "family lark_base");
        }
        int at = random.nextInt(text.length() + 1);
        return replaced(text, at, Math.min(text.length(), at + random.nextInt(4)), oneOf(PIECES));
    }

    /** The texts that follow each other while something is typed, or while what was typed is taken back. */
    List<String> typed(String text) {
        return switch (random.nextInt(8)) {
            case 0 -> List.of(anywhere(text));
            case 1, 2 -> inSteps(text);
            case 3 -> renamed(text);
            case 4 -> takenBack(text);
            default -> line(text);
        };
    }

    private static String replaced(String text, int from, int to, String by) {
        return text.substring(0, from) + by + text.substring(to);
    }

    /** Two small changes behind the first word of some step. */
    private List<String> inSteps(String text) {
        String once = inStep(text);
        return List.of(once, inStep(once));
    }

    private String inStep(String text) {
        int step = text.indexOf("step ", random.nextInt(text.length() + 1));
        int at = Math.min(text.length(), Math.max(0, step) + 5 + random.nextInt(200));
        return replaced(text, at, Math.min(text.length(), at + random.nextInt(3)), oneOf(PIECES));
    }

    /** The number behind a name becomes another one, there only: what referred to the name may lead elsewhere now. */
    private List<String> renamed(String text) {
        int at = text.indexOf(oneOf(List.of("mark m", "measure v", "step s", "of m", "go to s")),
                random.nextInt(text.length() + 1));
        while (at >= 0 && at < text.length() && !Character.isDigit(text.charAt(at))) {
            at++;
        }
        return at < 0 || at >= text.length() ? List.of(text)
                : List.of(replaced(text, at, at + 1, Integer.toString(random.nextInt(10))));
    }

    private List<String> takenBack(String text) {
        String changed = inStep(text);
        return List.of(changed, text);
    }

    /** A line that is typed letter by letter behind some line. */
    private List<String> line(String text) {
        int end = text.indexOf('\n', random.nextInt(text.length() + 1));
        int at = end < 0 ? text.length() : end;
        String line = "\n" + oneOf(LINES);
        int stop = random.nextInt(3) > 0 ? line.length() : random.nextInt(line.length() + 1);
        List<String> texts = new ArrayList<>();
        for (int letters = 1; letters <= stop; letters++) {
            texts.add(replaced(text, at, at, line.substring(0, letters)));
        }
        return texts.isEmpty() ? List.of(text) : texts;
    }
}
