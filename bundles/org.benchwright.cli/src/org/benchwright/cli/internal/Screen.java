package org.benchwright.cli.internal;

import java.time.Duration;
import java.util.Optional;

/** Where a person reads and types; the only way to standard output, standard error and standard input. */
public interface Screen extends AutoCloseable {

    /** Columns to print in. */
    int width();

    /** Prints a line to standard output. */
    void line(String text);

    /** Prints a line to standard error. */
    void remark(String text);

    /**
     * Asks for a line.
     *
     * @return the line; empty once there is no more input
     */
    Optional<String> ask(String prompt);

    /**
     * Asks for a line that nobody else should see.
     *
     * @return the line; empty once there is no more input, or where what is typed can't be hidden
     */
    Optional<String> secret(String prompt);

    /** True if a person types what {@link #secret} asks for, without seeing it. */
    boolean hides();

    /**
     * Lets time pass while keys are listened to.
     *
     * @param pause how the time is let pass
     * @return what was typed meanwhile; empty if nothing was
     */
    Optional<String> listen(Duration time, WhileListening pause) throws InterruptedException;

    /** Lets time pass. */
    @FunctionalInterface
    interface WhileListening {
        /** Waits. */
        void pause(Duration time) throws InterruptedException;
    }

    /** Shows a line in the place of the last one of this kind, where the screen can; otherwise does nothing. */
    void status(String text);

    /** Sounds the tone. */
    void tone();

    @Override
    void close();
}
