package org.benchwright.architecture.tests;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The folders of this checkout, as they are when all bundles have been built. */
final class Checkout {

    private static final Path BUNDLES = Path.of("..").toAbsolutePath().normalize();

    private Checkout() {
    }

    /** Folders with a manifest, that is: bundles with code or tests of theirs. */
    static List<Path> bundles() {
        try (Stream<Path> folders = Files.list(BUNDLES)) {
            return folders.filter(folder -> Files.exists(folder.resolve("META-INF/MANIFEST.MF"))).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Folders with Java sources, tests that run outside OSGi among them. */
    static List<Path> sourceFolders() {
        try (Stream<Path> folders = Files.list(BUNDLES)) {
            return folders.map(folder -> folder.resolve("src")).filter(Files::isDirectory).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The compiled classes of all bundles. */
    static List<Path> classFolders() {
        return bundles().stream().map(bundle -> bundle.resolve("target/classes")).filter(Files::isDirectory).toList();
    }

    /** Whether a class was written by hand, and not generated in the build. */
    static boolean isHandWritten(String className) {
        String file = className.replaceFirst("\\$.*", "").replace('.', '/') + ".java";
        return sourceFolders().stream().anyMatch(source -> Files.exists(source.resolve(file)));
    }

    static List<Path> filesBelow(Path folder, String ending) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
