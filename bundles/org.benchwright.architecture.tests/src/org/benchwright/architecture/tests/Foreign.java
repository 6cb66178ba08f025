package org.benchwright.architecture.tests;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Which bundle may use which library or part of the platform. */
final class Foreign {

    /** Libraries that are the affair of a bundle or two: nobody else may name them, so that they can be exchanged there. */
    private static final Map<String, Set<String>> OWNERS = Map.ofEntries(
            Map.entry("javax.measure", Set.of("core")),
            Map.entry("tech.units", Set.of("core")),
            Map.entry("org.hipparchus", Set.of("evidence")),
            Map.entry("java.sql", Set.of("ledger")),
            Map.entry("javax.sql", Set.of("ledger")),
            Map.entry("org.sqlite", Set.of("ledger")),
            Map.entry("org.erdtman", Set.of("ledger")),
            Map.entry("com.fasterxml.jackson", Set.of("ledger", "report", "workshop")),
            Map.entry("org.apache.pdfbox", Set.of("report")),
            Map.entry("org.apache.fontbox", Set.of("report")),
            Map.entry("org.apache.xmpbox", Set.of("report")),
            Map.entry("com.google.zxing", Set.of("report")),
            Map.entry("dejavu.fonts", Set.of("report")),
            // The OPC UA library, which is part of the watch's bundle, makes and reads certificates with it.
            Map.entry("org.bouncycastle", Set.of("ledger", "watch")),
            Map.entry("org.postgresql", Set.of("ledger")),
            Map.entry("com.digitalpetri", Set.of("watch")),
            Map.entry("org.eclipse.milo", Set.of("watch")),
            Map.entry("io.netty", Set.of("watch")),
            Map.entry("picocli", Set.of("cli")),
            Map.entry("org.jline", Set.of("cli")),
            Map.entry("org.knowm", Set.of("report")),
            // The window's own model, of which parts are hidden, is an EMF model.
            Map.entry("org.eclipse.emf", Set.of("model", "language", "ui")),
            Map.entry("org.eclipse.xtext", Set.of("language")),
            Map.entry("org.eclipse.elk", Set.of("ui")),
            Map.entry("org.commonmark", Set.of("ui")),
            Map.entry("com.google.gson", Set.of("cli")),
            Map.entry("org.eclipse.lsp4j", Set.of("language")),
            Map.entry("org.antlr", Set.of("language")),
            Map.entry("com.google.inject", Set.of("language")),
            Map.entry("com.google.common", Set.of("language")),
            Map.entry("org.apache.log4j", Set.of("language")));

    /** What needs a display: only the window may. */
    private static final List<String> SCREEN = List.of("org.eclipse.swt", "org.eclipse.jface", "org.eclipse.ui",
            "org.eclipse.e4.ui", "java.awt", "javax.swing");

    private static final Set<String> WITH_A_SCREEN = Set.of("ui", "ui.tests", "emptywindow.tests");

    /** The part of the platform library that draws into memory, which needs no display. */
    private static final String DRAWING = "java.awt";
    private static final Set<String> WITH_DRAWING = Set.of("report", "report.tests");

    /** The part of it that holds pictures in memory: photos are looked at before they are kept. */
    private static final String PICTURES = "java.awt.image";
    private static final Set<String> WITH_PICTURES = Set.of("present", "present.tests");

    /** Bundles that must run without any of the platform. */
    private static final Set<String> PLAIN_JAVA = Set.of("core", "evidence", "engine", "ledger");

    /** Bundles that never touch a disk. */
    private static final Set<String> NO_FILES = Set.of("evidence", "engine", "model");
    private static final List<String> FILES = List.of("java.nio.file", "java.nio.channels", "java.io.File",
            "java.io.RandomAccessFile");

    private Foreign() {
    }

    /**
     * Says what is wrong with a bundle naming a foreign bundle, package or class, if anything. Test bundles are free
     * but for the screen.
     */
    static Optional<String> objection(String bundle, String name) {
        boolean draws = WITH_DRAWING.contains(bundle) && within(DRAWING, name) || WITH_PICTURES.contains(bundle) && within(PICTURES, name);
        if (!WITH_A_SCREEN.contains(bundle) && !draws && matches(SCREEN.stream(), name)) {
            return Optional.of(bundle + " must do without a display, but knows " + name);
        }
        if (bundle.endsWith(".tests") || bundle.equals("testkit")) {
            return Optional.empty();
        }
        if (PLAIN_JAVA.contains(bundle) && matches(Stream.of("org.eclipse", "org.osgi"), name)) {
            return Optional.of(bundle + " must run without the platform, but knows " + name);
        }
        if (NO_FILES.contains(bundle) && matches(FILES.stream(), name)) {
            return Optional.of(bundle + " must not touch a disk, but knows " + name);
        }
        return OWNERS.entrySet().stream()
                .filter(owner -> within(owner.getKey(), name) && !owner.getValue().contains(bundle))
                .findFirst()
                .map(owner -> name + " is for " + new TreeSet<>(owner.getValue()) + " only, but " + bundle + " knows it");
    }

    private static boolean matches(Stream<String> prefixes, String name) {
        return prefixes.anyMatch(prefix -> within(prefix, name));
    }

    /** {@code java.io.File} covers {@code java.io.FileReader} too; a package covers its sub-packages and classes. */
    private static boolean within(String prefix, String name) {
        boolean classPrefix = Character.isUpperCase(prefix.charAt(prefix.lastIndexOf('.') + 1));
        return name.equals(prefix) || name.startsWith(prefix + ".") || classPrefix && name.startsWith(prefix);
    }
}
