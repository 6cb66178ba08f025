package org.benchwright.cli.tests;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.eclipse.core.runtime.FileLocator;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;

/** A class path for a plain Java process that sees what these tests see. */
final class ClassPath {

    private ClassPath() {
    }

    /** The bundles of the framework that these tests run in, or the class path where they run without one. */
    static String text() {
        Bundle own = FrameworkUtil.getBundle(ClassPath.class);
        if (own == null) {
            return System.getProperty("java.class.path");
        }
        return Stream.of(own.getBundleContext().getBundles()).filter(bundle -> bundle.getBundleId() != 0)
                .flatMap(bundle -> places(bundle).stream()).map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    /** The bundle's jar or folder; for a folder of sources, where its classes are compiled to. */
    private static List<Path> places(Bundle bundle) {
        Path place = FileLocator.getBundleFileLocation(bundle).orElseThrow(() -> new AssertionError(bundle + " lies nowhere")).toPath();
        Path compiled = place.resolve("target").resolve("classes");
        return Files.isDirectory(compiled) ? List.of(place, compiled) : List.of(place);
    }
}
