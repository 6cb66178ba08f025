package org.benchwright.ui.internal;

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
}
