package org.benchwright.cli.internal;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.Reference;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Attributes;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.utils.InfoCmp.Capability;
import org.jline.utils.NonBlockingReader;

/** A terminal with line editing; single keys are heard at once. */
public final class TerminalScreen implements Screen {

    private static final int NARROWEST = 40;
    private static final int WIDEST = 80;
    private static final int ROWS = 24;
    private static final String MAKE_SAFE_AT_ONCE = "make-safe-at-once";

    private static final char NOT_SHOWN = 0;

    private final Terminal terminal;
    private final LineReader reader;
    private final PrintWriter err;
    private boolean statusShown;
    private Optional<Attributes> beforeListening = Optional.empty();

    /**
     * @param terminal the terminal, closed with the screen
     * @param err      standard error
     */
    public TerminalScreen(Terminal terminal, OutputStream err) {
        this.terminal = terminal;
        if (terminal.getSize().getColumns() <= 0) {
            // Some consoles do not know their size; the line editor needs one.
            terminal.setSize(Size.of(WIDEST, ROWS));
        }
        this.err = new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true);
        this.reader = LineReaderBuilder.builder().terminal(terminal).appName("bench")
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                // What is pasted is one answer: its second line must not answer the next question, nor an empty one say that something is done.
                .option(LineReader.Option.BRACKETED_PASTE, true).build();
        bindMakeSafe();
    }

    /** The make-safe key needs no Enter behind it when it is the first on its line. */
    private void bindMakeSafe() {
        reader.getWidgets().put(MAKE_SAFE_AT_ONCE, () -> {
            boolean first = reader.getBuffer().length() == 0;
            reader.getBuffer().write('!');
            if (first) {
                reader.callWidget(LineReader.ACCEPT_LINE);
            }
            return true;
        });
        reader.getKeyMaps().get(LineReader.MAIN).bind(new Reference(MAKE_SAFE_AT_ONCE), "!");
    }

    @Override
    public int width() {
        return Math.max(NARROWEST, Math.min(WIDEST, terminal.getSize().getColumns()));
    }

    @Override
    public void line(String text) {
        clearStatus();
        terminal.writer().println(text);
        terminal.flush();
    }

    @Override
    public void remark(String text) {
        clearStatus();
        terminal.flush();
        err.println(text);
    }

    @Override
    public Optional<String> ask(String prompt) {
        clearStatus();
        try {
            return Optional.of(reader.readLine(prompt));
        } catch (UserInterruptException | EndOfFileException leaving) {
            return Optional.empty();
        }
    }

    /** A reader of its own: it keeps no history, and an exclamation mark is a letter like others. */
    @Override
    public Optional<String> secret(String prompt) {
        clearStatus();
        LineReader hidden = LineReaderBuilder.builder().terminal(terminal).appName("bench")
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true).option(LineReader.Option.BRACKETED_PASTE, false)
                .variable(LineReader.DISABLE_HISTORY, Boolean.TRUE).build();
        try {
            return Optional.of(hidden.readLine(prompt + " ", NOT_SHOWN));
        } catch (UserInterruptException | EndOfFileException leaving) {
            return Optional.empty();
        }
    }

    @Override
    public boolean hides() {
        return true;
    }

    @Override
    public Optional<String> listen(Duration time, WhileListening pause) throws InterruptedException {
        if (beforeListening.isEmpty()) {
            beforeListening = Optional.of(terminal.enterRawMode());
        }
        pause.pause(time);
        try {
            int key = terminal.reader().read(1);
            return key == NonBlockingReader.READ_EXPIRED ? Optional.empty()
                    : Optional.of(key < 0 ? "q" : Character.toString(key)).filter(Screens::heardAtOnce);
        } catch (IOException broken) {
            throw new IllegalStateException("the terminal can't be read", broken);
        }
    }

    /** Single keys are listened to until something else is done: setting the terminal for each slice of a long wait would slow it. */
    private void stopListening() {
        beforeListening.ifPresent(terminal::setAttributes);
        beforeListening = Optional.empty();
    }

    @Override
    public void status(String text) {
        if (terminal.getType().startsWith(Terminal.TYPE_DUMB)) {
            return;
        }
        terminal.writer().print('\r');
        terminal.writer().print(text);
        terminal.puts(Capability.clr_eol);
        terminal.flush();
        statusShown = true;
    }

    private void clearStatus() {
        stopListening();
        if (statusShown) {
            terminal.writer().print('\r');
            terminal.puts(Capability.clr_eol);
            statusShown = false;
        }
    }

    @Override
    public void tone() {
        clearStatus();
        terminal.writer().print('\u0007');
        terminal.writer().println(Message.TONE.text());
        terminal.flush();
    }

    @Override
    public void close() {
        try {
            stopListening();
            terminal.flush();
            terminal.close();
        } catch (IOException e) {
            err.println(Message.INPUT_BROKEN.text(String.valueOf(e.getMessage())));
        }
    }
}
