package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/** The keyboard of the screen on which the tests run: whatever is typed here reaches the window as a person's keys would. */
final class Keyboard {

    private static final int PATIENCE_SECONDS = 240;

    private Keyboard() {
    }

    static void type(String text) throws IOException, InterruptedException {
        run("type", "--delay", "3", text);
    }

    /** Presses keys, by their X names: Return, Tab, ctrl+n. */
    static void press(String... keys) throws IOException, InterruptedException {
        List<String> arguments = new ArrayList<>(List.of("key", "--delay", "3"));
        arguments.addAll(List.of(keys));
        run(arguments.toArray(String[]::new));
    }

    /** Gives a window the keyboard, as a window manager would: there may be none on the screen. */
    static void focus(String titlePart) throws IOException, InterruptedException {
        run("search", "--onlyvisible", "--name", titlePart, "windowfocus", "--sync", "%1");
    }

    /** Waits until a window on the screen has a title of that pattern, the whole of it. */
    static void awaitTitle(String pattern) throws IOException, InterruptedException {
        await(pattern, true);
    }

    /** Waits until no window on the screen has such a title. */
    static void awaitNoTitle(String pattern) throws IOException, InterruptedException {
        await(pattern, false);
    }

    private static void await(String pattern, boolean there) throws IOException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        Pattern wanted = Pattern.compile(pattern);
        List<String> titles = titles();
        while (titles.stream().anyMatch(title -> wanted.matcher(title).matches()) != there) {
            assertTrue(System.nanoTime() < end, pattern + " " + there + ": waited too long; there are " + titles);
            TimeUnit.MILLISECONDS.sleep(50);
            titles = titles();
        }
    }

    /** The titles of all windows that can be seen. */
    static List<String> titles() throws IOException, InterruptedException {
        return run("search", "--onlyvisible", "--name", ".", "getwindowname", "%@").lines().map(String::strip)
                .filter(title -> !title.isEmpty()).toList();
    }

    private static String run(String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("xdotool"));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return out;
    }
}
