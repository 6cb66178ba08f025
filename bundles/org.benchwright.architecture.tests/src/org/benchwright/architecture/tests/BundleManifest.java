package org.benchwright.architecture.tests;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.stream.Stream;

/**
 * What a bundle says of itself.
 *
 * @param name the bundle's id
 * @param requiredBundles bundle ids
 * @param importedPackages package names
 * @param exportedPackages package names
 * @param reexports whether it hands on what it requires
 */
record BundleManifest(String name, List<String> requiredBundles, List<String> importedPackages,
        List<String> exportedPackages, boolean reexports) {

    static BundleManifest read(Path file) throws IOException {
        return parse(Files.readString(file));
    }

    static BundleManifest parse(String text) throws IOException {
        Attributes main = new Manifest(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)))
                .getMainAttributes();
        String required = header(main, "Require-Bundle");
        return new BundleManifest(names(header(main, "Bundle-SymbolicName")).get(0), names(required),
                names(header(main, "Import-Package")), names(header(main, "Export-Package")),
                required.contains("visibility:=reexport"));
    }

    /** What the manifest breaks of the arrows and of the rules for libraries. */
    List<String> objections(Arrows arrows) {
        String bundle = arrows.bundleOf(name).orElseThrow();
        List<String> objections = new ArrayList<>();
        for (String other : Stream.concat(requiredBundles.stream(), importedPackages.stream()).toList()) {
            arrows.bundleOf(other)
                    .map(to -> arrows.objection(bundle, to))
                    .orElseGet(() -> Foreign.objection(bundle, other))
                    .ifPresent(words -> objections.add(name + ": " + words));
        }
        importedPackages.stream().filter(imported -> arrows.bundleOf(imported).isPresent())
                .forEach(imported -> objections.add(name + ": " + imported + " is ours; require its bundle instead"));
        if (reexports) {
            objections.add(name + ": re-exports what it requires, which draws arrows that nobody sees");
        }
        return objections;
    }

    private static String header(Attributes main, String key) {
        String value = main.getValue(key);
        return value == null ? "" : value;
    }

    /** The clauses' names, without attributes and directives (whose quoted values may hold commas). */
    private static List<String> names(String header) {
        return Arrays.stream(header.replaceAll("\"[^\"]*\"", "").split(","))
                .map(clause -> clause.split(";")[0].trim())
                .filter(clause -> !clause.isEmpty())
                .toList();
    }
}
