package org.benchwright.testkit.internal;

import java.util.List;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;

import org.junit.jupiter.api.DynamicTest;
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

import net.jqwik.engine.JqwikTestEngine;

/** Finds the properties of a class and runs each on its own. */
public final class PropertyRunner {

    /** Quiet, as the engine would tell of the switched-off database at every property. */
    private static final Logger ENGINE_LOG = Logger.getLogger("net.jqwik.engine");

    static {
        ENGINE_LOG.setLevel(Level.WARNING);
    }

    private PropertyRunner() {
    }

    /**
     * One test for each property of a class.
     *
     * @throws IllegalStateException if there is none
     */
    public static List<DynamicTest> testsOf(Class<?> type) {
        ClassLoader loader = new EngineAndTestLoader(type.getClassLoader());
        Launcher launcher = with(loader, PropertyRunner::launcher);
        TestPlan plan = with(loader, () -> launcher.discover(request(type)));
        List<DynamicTest> tests = plan.getRoots().stream()
                .flatMap(root -> plan.getDescendants(root).stream())
                .filter(TestIdentifier::isTest)
                .map(property -> DynamicTest.dynamicTest(property.getDisplayName(), () -> run(launcher, loader, property)))
                .toList();
        if (tests.isEmpty()) {
            throw new IllegalStateException(type.getName() + " has no property to run");
        }
        return tests;
    }

    private static void run(Launcher launcher, ClassLoader loader, TestIdentifier property) {
        PropertyOutcome outcome = new PropertyOutcome();
        with(loader, () -> {
            launcher.execute(request(property), outcome);
            return outcome;
        }).orThrow();
    }

    private static Launcher launcher() {
        LauncherConfig config = LauncherConfig.builder()
                .enableTestEngineAutoRegistration(false)
                .enableTestExecutionListenerAutoRegistration(false)
                .enableLauncherSessionListenerAutoRegistration(false)
                .enableLauncherDiscoveryListenerAutoRegistration(false)
                .enablePostDiscoveryFilterAutoRegistration(false)
                .addTestEngines(new JqwikTestEngine())
                .build();
        return LauncherFactory.create(config);
    }

    private static LauncherDiscoveryRequest request(Class<?> type) {
        return settings().selectors(DiscoverySelectors.selectClass(type)).build();
    }

    private static LauncherDiscoveryRequest request(TestIdentifier property) {
        return settings().selectors(DiscoverySelectors.selectUniqueId(property.getUniqueIdObject())).build();
    }

    /** The engine writes no file into the current folder, and reports through the platform, and so into the failure's words. */
    private static LauncherDiscoveryRequestBuilder settings() {
        return LauncherDiscoveryRequestBuilder.request()
                .configurationParameter("jqwik.database", "")
                .configurationParameter("jqwik.reporting.usejunitplatform", "true");
    }

    private static <T> T with(ClassLoader loader, Supplier<T> action) {
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(loader);
        try {
            return action.get();
        } finally {
            thread.setContextClassLoader(before);
        }
    }
}
