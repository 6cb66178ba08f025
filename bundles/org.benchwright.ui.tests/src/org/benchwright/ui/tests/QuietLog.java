package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.eclipse.core.runtime.ILogListener;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Fails a test during which the window logged an error: an extension that can't be made is told nowhere else. */
final class QuietLog implements BeforeEachCallback, AfterEachCallback {

    private static final int FRAMES = 12;

    private final List<String> errors = new CopyOnWriteArrayList<>();
    private final ILogListener listener = (status, plugin) -> {
        if (status.getSeverity() == IStatus.ERROR) {
            errors.add(plugin + ": " + status.getMessage() + where(status.getException()));
        }
    };

    /** What was thrown, and where: a failure that comes once in a hundred runs has to be understood from its words. */
    private static String where(Throwable thrown) {
        return thrown == null ? "" : " " + thrown + Stream.of(thrown.getStackTrace()).limit(FRAMES).map(frame -> " < " + frame).collect(Collectors.joining());
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        // One extension serves all tests of a class; an error is told by the test during which it was logged only.
        errors.clear();
        Platform.addLogListener(listener);
    }

    @Override
    public void afterEach(ExtensionContext context) {
        Platform.removeLogListener(listener);
        assertEquals(List.of(), errors);
    }
}
