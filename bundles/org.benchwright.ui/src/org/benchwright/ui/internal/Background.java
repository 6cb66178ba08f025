package org.benchwright.ui.internal;

import java.util.concurrent.CompletableFuture;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;

/** Work that somebody waits for, but the display's thread must not. */
public final class Background {

    private Background() {
    }

    /**
     * Does something soon, apart from the display's thread.
     *
     * @param name what it is, for the log
     * @param work what to do
     * @return the job, for those who may want to cancel it
     */
    public static Job soon(String name, ICoreRunnable work) {
        Job job = Job.createSystem(name, work);
        job.setPriority(Job.INTERACTIVE);
        job.schedule();
        return job;
    }

    /** Something that may be refused. */
    @FunctionalInterface
    public interface Deed {
        /** Does it. */
        void done() throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /**
     * Does something soon, apart from the display's thread, of which somebody wants to know what came of it.
     *
     * @param name what it is, for the log
     * @return fails with what refused it
     */
    public static CompletableFuture<Void> begun(String name, Deed deed) {
        CompletableFuture<Void> ended = new CompletableFuture<>();
        soon(name, monitor -> {
            try {
                deed.done();
                ended.complete(null);
            } catch (EntryRefusedException | TakenElsewhereException | CannotStoreException | RuntimeException refused) {
                // One that nobody foresaw would leave a dialog in which nothing can be pressed any more.
                ended.completeExceptionally(refused);
            }
        });
        return ended;
    }
}
