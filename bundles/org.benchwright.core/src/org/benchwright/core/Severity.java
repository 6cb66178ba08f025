package org.benchwright.core;

import java.util.Locale;

/** How much a finding matters. */
public enum Severity {
    /** It can't stay so. */
    ERROR,
    /** It is likely a mistake. */
    WARNING,
    /** Good to know. */
    INFO;

    /**
     * The word as printed in lists of remarks.
     *
     * @return {@code error}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
