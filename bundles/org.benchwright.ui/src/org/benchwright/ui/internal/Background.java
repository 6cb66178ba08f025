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
     */
    public static void soon(Message name, ICoreRunnable work) {
        Job job = Job.createSystem(name.text(), work);
        job.setPriority(Job.INTERACTIVE);
        job.schedule();
    }
}
