package org.benchwright.testkit.internal;

import java.util.ArrayList;
import java.util.List;

import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.reporting.ReportEntry;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.opentest4j.AssertionFailedError;

/** What became of one property, with the sample and seed that the engine reported. */
final class PropertyOutcome implements TestExecutionListener {

    private final List<String> reports = new ArrayList<>();
    private final List<TestExecutionResult> unsuccessful = new ArrayList<>();
    private boolean ran;

    @Override
    public void executionStarted(TestIdentifier identifier) {
        ran |= identifier.isTest();
    }

    @Override
    public void reportingEntryPublished(TestIdentifier identifier, ReportEntry entry) {
        reports.addAll(entry.getKeyValuePairs().values());
    }

    @Override
    public void executionFinished(TestIdentifier identifier, TestExecutionResult result) {
        if (result.getStatus() != TestExecutionResult.Status.SUCCESSFUL) {
            unsuccessful.add(result);
        }
    }

    /**
     * Does nothing after a property that held.
     *
     * @throws AssertionFailedError if it did not hold, tried nothing, or never ran
     */
    void orThrow() {
        for (TestExecutionResult result : unsuccessful) {
            Throwable cause = result.getThrowable().orElse(null);
            String words = (cause == null ? result.getStatus().toString() : cause.getMessage())
                    + System.lineSeparator() + String.join(System.lineSeparator(), reports);
            throw new AssertionFailedError(words, cause);
        }
        if (!ran) {
            throw new AssertionFailedError("The property was found but did not run.");
        }
    }
}
