package org.benchwright.ledger.internal.verify;

/** Waits for threads that use what is about to be closed. */
final class Waiting {

    private Waiting() {
    }

    /** Until {@code thread} has ended, or at once if it never began; an interruption meanwhile is kept for whoever asks next. */
    static void uninterrupted(Thread thread) {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException again) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
