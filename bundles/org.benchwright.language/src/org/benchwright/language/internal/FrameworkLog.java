package org.benchwright.language.internal;

import org.apache.log4j.AppenderSkeleton;
import org.apache.log4j.Level;
import org.apache.log4j.Logger;
import org.apache.log4j.spi.LoggingEvent;

/** Hands what the language framework logs to the platform's logger: errors only, nothing to the console by itself. */
public final class FrameworkLog extends AppenderSkeleton {

    private final System.Logger platform = System.getLogger("org.benchwright.language");

    private FrameworkLog() {
        setThreshold(Level.ERROR);
    }

    /** Takes the framework's log over, unless somebody else configured it. */
    public static void quieten() {
        Logger root = Logger.getRootLogger();
        if (!root.getAllAppenders().hasMoreElements()) {
            root.addAppender(new FrameworkLog());
        }
    }

    @Override
    protected void append(LoggingEvent event) {
        Throwable thrown = event.getThrowableInformation() == null ? null : event.getThrowableInformation().getThrowable();
        platform.log(System.Logger.Level.ERROR, String.valueOf(event.getMessage()), thrown);
    }

    @Override
    public void close() {
        // Nothing is held open.
    }

    @Override
    public boolean requiresLayout() {
        return false;
    }
}
