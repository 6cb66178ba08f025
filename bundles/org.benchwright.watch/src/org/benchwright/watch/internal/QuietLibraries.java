package org.benchwright.watch.internal;

import io.netty.util.internal.logging.InternalLoggerFactory;
import io.netty.util.internal.logging.Slf4JLoggerFactory;

/** What the libraries log is not shown: whatever concerns people is told in words of ours, where it happens. */
public final class QuietLibraries {

    private static final String VERBOSITY = "slf4j.internal.verbosity";

    private QuietLibraries() {
    }

    /** To be called before one of them is used. */
    public static void hush() {
        if (System.getProperty(VERBOSITY) == null) {
            System.setProperty(VERBOSITY, "ERROR");
        }
        InternalLoggerFactory.setDefaultFactory(Slf4JLoggerFactory.INSTANCE);
    }
}
