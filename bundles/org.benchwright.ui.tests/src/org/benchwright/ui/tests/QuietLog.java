package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

import org.eclipse.core.runtime.ILogListener;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Fails a test during which the window logged an error: an extension that can't be made is told nowhere else. */
final class QuietLog implements BeforeEachCallback, AfterEachCallback {

    private final List<String> errors = new CopyOnWriteArrayList<>();
    private final ILogListener listener = (status, plugin) -> {
        if (status.getSeverity() == IStatus.ERROR) {
            errors.add(plugin + ": " + status.getMessage() + " " + status.getException());
        }
    };

    @Override
    public void beforeEach(ExtensionContext context) {
        Platform.addLogListener(listener);
    }

    @Override
    public void afterEach(ExtensionContext context) {
        Platform.removeLogListener(listener);
        assertEquals(List.of(), errors);
    }
}
