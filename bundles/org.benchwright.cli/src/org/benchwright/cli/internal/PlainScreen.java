package org.benchwright.cli.internal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.BlockingDeque;
import java.util.concurrent.LinkedBlockingDeque;

import org.benchwright.cli.Surroundings;

/** Lines in, lines out: for pipes, files, and terminals that can do no more. */
final class PlainScreen implements Screen {

    private static final int WIDTH = 80;

    /** A line of input, or the end of it. */
    private record Input(Optional<String> line) {
    }

    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean console;
    private final BlockingDeque<Input> typed = new LinkedBlockingDeque<>();

    private PlainScreen(OutputStream out, OutputStream err, boolean console) {
        this.out = new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), true);
        this.err = new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true);
        this.console = console;
    }

    /** A screen that nobody answers at. */
    static PlainScreen silent(OutputStream out, OutputStream err) {
        return new PlainScreen(out, err, false);
    }

    /** A screen that reads lines. Input is read by a thread of its own, so that a key is heard during a countdown too. */
    static PlainScreen reading(Surroundings around) {
        return reading(around.in(), around.out(), around.err(), around.terminal());
    }

    private static PlainScreen reading(InputStream in, OutputStream out, OutputStream err, boolean console) {
        PlainScreen screen = new PlainScreen(out, err, console);
        Thread reader = new Thread(() -> screen.readAll(in), "standard input");
        reader.setDaemon(true);
        reader.start();
        return screen;
    }

    private void readAll(InputStream in) {
        BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        try {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                typed.add(new Input(Optional.of(line)));
            }
        } catch (IOException unreadable) {
            err.println(Message.INPUT_BROKEN.text(String.valueOf(unreadable.getMessage())));
        }
        typed.add(new Input(Optional.empty()));
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public void line(String text) {
        out.println(text);
    }

    @Override
    public void remark(String text) {
        err.println(text);
    }

    @Override
    public Optional<String> ask(String prompt) {
        out.print(prompt);
        out.flush();
        Optional<String> line = next();
        out.println(line.orElse(""));
        return line;
    }

    private Optional<String> next() {
        try {
            Input next = typed.take();
            if (next.line().isEmpty()) {
                typed.addFirst(next);
            }
            return next.line();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    /** Nothing of it is printed; a console that shows what is typed is none to give passwords at. */
    @Override
    public Optional<String> secret(String prompt) {
        if (console) {
            err.println(Message.CANNOT_HIDE.text());
            return Optional.empty();
        }
        out.println(prompt);
        return next();
    }

    @Override
    public boolean hides() {
        return false;
    }

    /** Only a command that stands next in line is heard: a line typed ahead answers the question to come. */
    @Override
    public Optional<String> listen(Duration time, WhileListening pause) throws InterruptedException {
        pause.pause(time);
        Input next = typed.peek();
        if (next != null && next.line().filter(Screens::heardAtOnce).isPresent()) {
            typed.remove(next);
            return next.line();
        }
        return Optional.empty();
    }

    @Override
    public void status(String text) {
        // A line can't be taken back here.
    }

    @Override
    public void tone() {
        out.println(Message.TONE.text());
    }

    @Override
    public void close() {
        out.flush();
        err.flush();
    }
}
