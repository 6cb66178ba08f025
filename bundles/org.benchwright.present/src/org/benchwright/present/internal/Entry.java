package org.benchwright.present.internal;

import java.nio.file.Path;

import org.benchwright.engine.event.Fact;

/** What was typed, understood. */
public sealed interface Entry {

    /** It tells a fact. */
    record Told(Fact fact) implements Entry {
    }

    /** It names a file to keep and attach. */
    record File(String check, Path file) implements Entry {
    }
}
