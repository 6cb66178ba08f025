package org.benchwright.cli.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * What a tutorial has its reader do: files to write ({@code ```file NAME}), lines to change in them ({@code ```diff NAME}), commands with what is typed
 * and printed ({@code ```console}), and, in a comment that nobody sees, time that passes.
 */
final class TutorialPage {

    private static final Pattern PART = Pattern.compile("^```(file|diff|console) ?(\\S*)\\n(.*?)^```$|^<!-- (\\d+) min pass -->$",
            Pattern.DOTALL | Pattern.MULTILINE);

    private TutorialPage() {
    }

    /** Something that the reader does. */
    sealed interface Deed {
    }

    /** A file is written. */
    record Writes(String name, String text) implements Deed {
    }

    /** Lines of a file become others. */
    record Changes(String name, String before, String after) implements Deed {
    }

    /** Time passes. */
    record Waits(Duration time) implements Deed {
    }

    /**
     * A command is given.
     *
     * @param line    the command
     * @param typed   the lines typed while it runs
     * @param printed the lines that it prints, in order, not all of them where one is {@code ...}
     */
    record Commands(String line, List<String> typed, List<String> printed) implements Deed {
    }

    /** The deeds of a page, in order. */
    static List<Deed> deeds(Path page) throws IOException {
        List<Deed> deeds = new ArrayList<>();
        for (MatchResult part : PART.matcher(Files.readString(page)).results().toList()) {
            if (part.group(4) != null) {
                deeds.add(new Waits(Duration.ofMinutes(Long.parseLong(part.group(4)))));
            } else {
                switch (part.group(1)) {
                    case "file" -> deeds.add(new Writes(part.group(2), part.group(3)));
                    case "diff" -> deeds.add(new Changes(part.group(2), lines(part.group(3), "-"), lines(part.group(3), "+")));
                    default -> deeds.addAll(commands(part.group(3)));
                }
            }
        }
        return deeds;
    }

    private static String lines(String diff, String sign) {
        StringBuilder text = new StringBuilder();
        diff.lines().filter(line -> line.startsWith(sign)).forEach(line -> text.append(line.substring(1)).append('\n'));
        return text.toString();
    }

    private static List<Deed> commands(String block) {
        List<Deed> commands = new ArrayList<>();
        for (String command : block.replace("\\\n", "").split("(?m)^\\$ ")) {
            if (!command.isBlank()) {
                List<String> lines = command.lines().toList();
                List<String> below = lines.subList(1, lines.size());
                commands.add(new Commands(lines.get(0).strip(), below.stream().filter(TutorialPage::isTyped).map(line -> line.substring(1).strip()).toList(),
                        below.stream().filter(line -> !isTyped(line) && !line.isBlank()).map(String::strip).toList()));
            }
        }
        return commands;
    }

    private static boolean isTyped(String line) {
        return line.startsWith(">");
    }
}
