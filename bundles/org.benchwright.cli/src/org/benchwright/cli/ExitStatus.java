package org.benchwright.cli;

import org.benchwright.core.Verdict;

/** What a command ends with; scripts rely on these numbers. */
public final class ExitStatus {

    /** Accepted, or would be; for other commands: done, nothing wrong. */
    public static final int OK = 0;
    /**
     * What was given is not good: arguments, a procedure, an answer; or it was refused. For what only looks: faults or differences were found.
     * For several at once: one at least was refused.
     */
    public static final int BAD_INPUT = 1;
    /** Something can't be read or written, or something happened that nobody expected. */
    public static final int CANNOT_STORE = 2;
    /** Rejected, or would be. */
    public static final int REJECTED = 3;
    /** Undecided, or would be. */
    public static final int UNDECIDED = 4;
    /** The test was left open; the same command takes it up again. */
    public static final int LEFT_OPEN = 5;

    private ExitStatus() {
    }

    /** The status that follows a verdict. */
    public static int of(Verdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> OK;
            case REJECTED -> REJECTED;
            case UNDECIDED -> UNDECIDED;
        };
    }
}
