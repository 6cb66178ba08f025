package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.cli.internal.LanguageSource;

/** Does what tutorials say, one after another, in one folder and by the true command line, and finds what they say that it prints. */
final class TutorialWalk {

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|(\\S+)");
    /** What is another in every ledger: ids of tests, digests. */
    private static final Pattern OWN = Pattern.compile("T-[0-9A-Z]{5}-[0-9A-Z]{5}|[0-9a-f]{64}");

    private final CommandRunner bench;
    private final Map<String, String> own = new HashMap<>();
    private final StringBuilder log = new StringBuilder();
    private int status;

    TutorialWalk(Path folder) throws IOException {
        bench = new CommandRunner(folder).with(new LanguageSource());
    }

    /** Walks through a page. */
    void walk(Path page) throws IOException {
        for (TutorialPage.Deed deed : TutorialPage.deeds(page)) {
            if (deed instanceof TutorialPage.Writes file) {
                Path path = bench.folder().resolve(file.name());
                Files.createDirectories(path.getParent());
                Files.writeString(path, file.text());
            } else if (deed instanceof TutorialPage.Changes change) {
                change(bench.folder().resolve(change.name()), change);
            } else if (deed instanceof TutorialPage.Waits wait) {
                bench.time().advance(wait.time());
            } else if (deed instanceof TutorialPage.Commands command) {
                run(page, command);
            }
        }
    }

    /** Everything that was typed and printed. */
    String log() {
        return log.toString();
    }

    private static void change(Path file, TutorialPage.Changes change) throws IOException {
        String text = Files.readString(file);
        assertTrue(text.contains(change.before()), () -> file + " does not hold: " + change.before());
        Files.writeString(file, text.replace(change.before(), change.after()));
    }

    private void run(Path page, TutorialPage.Commands command) throws IOException {
        String line = bound(command.line());
        log.append("$ ").append(line).append('\n');
        if (line.equals("echo $?")) {
            assertEquals(command.printed(), List.of(String.valueOf(status)), page + ": " + log);
            return;
        }
        List<String> words = words(line);
        if (words.get(0).equals("mkdir")) {
            Files.createDirectories(bench.folder().resolve(words.get(1)));
            return;
        }
        assertEquals("bench", words.remove(0), page + ": only bench is run: " + line);
        CommandRunner.Ended ended = runner(words).typing(String.join("\n", command.typed()) + (command.typed().isEmpty() ? "" : "\n"), words.toArray(String[]::new));
        status = ended.status();
        log.append(ended.out()).append(ended.err());
        Printed printed = new Printed(ended.out() + ended.err());
        for (String expected : command.printed()) {
            if (!expected.equals("...")) {
                assertTrue(printed.finds(expected), () -> page + ": \"" + line + "\" does not print \"" + expected + "\" here. All so far:\n" + log);
            }
        }
    }

    /** A watch samples by threads of its own, while time goes by. */
    private CommandRunner runner(List<String> words) {
        return bench.timeGoesBy(words.get(0).equals("watch"));
    }

    private static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        for (Matcher word = WORD.matcher(line); word.find();) {
            words.add(word.group(1) != null ? word.group(1) : word.group(2) != null ? word.group(2) : word.group(3));
        }
        return words;
    }

    /** The text with this ledger's own ids in place of the page's. */
    private String bound(String text) {
        return OWN.matcher(text).replaceAll(found -> own.getOrDefault(found.group(), found.group()));
    }

    /** What a command printed, read from the beginning to the end; a line may be broken differently. */
    private final class Printed {
        private final String text;
        private int read;

        Printed(String text) {
            this.text = text.replaceAll("\\s+", " ");
        }

        boolean finds(String line) {
            StringBuilder pattern = new StringBuilder();
            List<String> unbound = new ArrayList<>();
            Matcher found = OWN.matcher(line);
            int end = 0;
            for (; found.find(); end = found.end()) {
                pattern.append(literal(line.substring(end, found.start())));
                String known = own.get(found.group());
                pattern.append(known == null ? "(" + OWN.pattern() + ")" : Pattern.quote(known));
                if (known == null) {
                    unbound.add(found.group());
                }
            }
            pattern.append(literal(line.substring(end)));
            Matcher here = Pattern.compile(pattern.toString()).matcher(text);
            if (!here.find(read)) {
                return false;
            }
            for (int i = 0; i < unbound.size(); i++) {
                own.put(unbound.get(i), here.group(i + 1));
            }
            read = here.end();
            return true;
        }

        private static String literal(String words) {
            return words.isEmpty() ? "" : Pattern.quote(words.replaceAll("\\s+", " "));
        }
    }
}
