package org.benchwright.present;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

import org.benchwright.present.internal.Message;

/**
 * Calls somebody when a watch has seen that somebody should come: by the desktop's notifications, and by a command of the workshop's own. Both are
 * started as a list of arguments, never by a shell, with texts of bounded length and without control characters; one at a time, and none for ever.
 */
public final class WatchCalls implements AutoCloseable {

    private static final int MOST_WAITING = 20;
    private static final int LONGEST_TEXT = 300;
    private static final long PATIENCE_S = 10;

    private final List<List<String>> commands = new ArrayList<>();
    private final Consumer<String> trouble;
    private final ExecutorService calls = new ThreadPoolExecutor(1, 1, 0, TimeUnit.SECONDS, new ArrayBlockingQueue<>(MOST_WAITING), work -> {
        Thread thread = new Thread(work, "watch calls");
        thread.setDaemon(true);
        return thread;
    }, new ThreadPoolExecutor.DiscardOldestPolicy());

    /** @param trouble hears why a call did not work */
    public WatchCalls(Consumer<String> trouble) {
        this.trouble = trouble;
    }

    /** From now on by desktop notifications too, which are those of freedesktop.org; where nobody shows them, that is told as trouble. */
    public WatchCalls byDesktop() {
        commands.add(List.of("notify-send", "--app-name=Benchwright", "--urgency=critical", "--"));
        return this;
    }

    /** From now on by this command too: it gets kind, serial number, test and words. */
    public WatchCalls byCommand(String file) {
        commands.add(List.of(file));
        return this;
    }

    /**
     * Calls; returns at once.
     *
     * @param kind what happened, in a word
     * @param words the same at length
     */
    public void call(String kind, String test, String serial, String words) {
        for (List<String> command : commands) {
            boolean desktop = command.size() > 1;
            List<String> arguments = new ArrayList<>(command);
            arguments.addAll(desktop ? List.of(plain(serial + ": " + kind), unmarked(plain(words))) : List.of(kind, plain(serial), plain(test), plain(words)));
            calls.execute(() -> run(arguments));
        }
    }

    /** A text that can do no harm as an argument: short, on one line, and no option. */
    public static String plain(String text) {
        String cut = text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text;
        String line = cut.replaceAll("\\p{Cntrl}", " ").strip();
        return line.startsWith("-") ? " " + line : line;
    }

    /** Those who show notifications may read marks in their text, and words come from units and certificates, too. */
    private static String unmarked(String text) {
        return text.replaceAll("[<>&]", " ");
    }

    private void run(List<String> arguments) {
        try {
            Process process = new ProcessBuilder(arguments).redirectOutput(Redirect.DISCARD).redirectError(Redirect.DISCARD).start();
            process.getOutputStream().close();
            if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                trouble.accept(Message.CALL_SLOW.text(arguments.get(0)));
            } else if (process.exitValue() != 0) {
                trouble.accept(Message.CALL_REFUSED.text(arguments.get(0), String.valueOf(process.exitValue())));
            }
        } catch (IOException e) {
            trouble.accept(Message.CALL_FAILED.text(arguments.get(0), String.valueOf(e.getMessage())));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        calls.shutdown();
        try {
            calls.awaitTermination(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
