package org.benchwright.core;

/** Whether somebody has asked a long piece of work to stop. May be asked from any thread, any number of times. */
@FunctionalInterface
public interface Cancellation {

    /**
     * Whether to stop.
     *
     * @return true from the moment somebody asked
     */
    boolean requested();

    /**
     * For work that nobody can stop.
     *
     * @return a cancellation that is never requested
     */
    static Cancellation never() {
        return () -> false;
    }
}
