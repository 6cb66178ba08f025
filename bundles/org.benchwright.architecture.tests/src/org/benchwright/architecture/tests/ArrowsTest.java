package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nobody knows whom he must not know; and the checks themselves would tell. */
class ArrowsTest {

    @Test
    void everyBundleIsInTheTable() {
        Set<String> onDisk = Checkout.bundles().stream()
                .map(bundle -> bundle.getFileName().toString().replaceFirst("^org\\.benchwright\\.", ""))
                .filter(name -> !name.endsWith(".tests"))
                .collect(Collectors.toSet());
        assertEquals(Arrows.OF_THE_PROJECT.drawn().keySet(), onDisk);
    }

    @Test
    void manifestsFollowTheArrows() throws Exception {
        List<String> objections = new ArrayList<>();
        for (Path bundle : Checkout.bundles()) {
            objections.addAll(BundleManifest.read(bundle.resolve("META-INF/MANIFEST.MF"))
                    .objections(Arrows.OF_THE_PROJECT));
        }
        assertEquals("", String.join("\n", objections));
    }

    @Test
    void classesFollowTheArrows() {
        assertTrue(CompiledClasses.ALL.size() > 200, "only " + CompiledClasses.ALL.size() + " classes were found");
        assertEquals("", String.join("\n", CompiledClasses.ALL.objections(Arrows.OF_THE_PROJECT)));
    }

    /** Rubs one drawn and used arrow out: the classes that use it must then be named. */
    @Test
    void aClassThatUsesAnArrowNotDrawnIsNamed() {
        Set<String> objections = CompiledClasses.ALL.objections(Arrows.OF_THE_PROJECT.without("engine", "evidence"));
        assertTrue(objections.stream().anyMatch(line -> line.startsWith("org.benchwright.engine.")
                && line.endsWith("engine -> evidence is not drawn")), String.join("\n", objections));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "engine   | Require-Bundle: org.benchwright.ledger             | engine -> ledger is not drawn",
            "ledger   | Require-Bundle: org.benchwright.engine             | ledger -> engine is not drawn",
            "core     | Require-Bundle: org.benchwright.evidence           | core -> evidence is not drawn",
            "core     | Import-Package: org.benchwright.evidence           | core -> evidence is not drawn",
            "present  | Require-Bundle: org.benchwright.ledger             | present -> ledger is not drawn",
            "core     | Require-Bundle: org.benchwright.testkit            | core -> testkit is not drawn",
            "engine   | Require-Bundle: org.eclipse.emf.ecore              | engine must run without the platform",
            "cli      | Require-Bundle: org.eclipse.swt                    | cli must do without a display",
            "workshop | Import-Package: javax.sql                          | javax.sql is for [ledger] only",
            "workshop | Require-Bundle: org.eclipse.xtext;bundle-version=2 | org.eclipse.xtext is for [language] only",
            "cli      | Require-Bundle: org.benchwright.present;visibility:=reexport | re-exports what it requires" })
    void aManifestThatBreaksARuleIsNamed(String bundle, String header, String words) throws Exception {
        BundleManifest manifest = BundleManifest.parse("Manifest-Version: 1.0\nBundle-SymbolicName: org.benchwright."
                + bundle + ";singleton:=true\n" + header + "\n");
        List<String> objections = manifest.objections(Arrows.OF_THE_PROJECT);
        assertTrue(objections.stream().anyMatch(line -> line.contains(words)), objections.toString());
    }

    @Test
    void aManifestThatKeepsTheRulesIsNotNamed() throws Exception {
        BundleManifest manifest = BundleManifest.parse("""
                Manifest-Version: 1.0
                Bundle-SymbolicName: org.benchwright.ledger
                Require-Bundle: org.benchwright.core;bundle-version="[0.1,0.2)"
                Import-Package: javax.sql,org.sqlite
                """);
        assertEquals(List.of(), manifest.objections(Arrows.OF_THE_PROJECT));
    }

    @ParameterizedTest
    @CsvSource({
            "language, engine, org.benchwright.engine,          language -> engine is drawn to org.benchwright.engine.plan only",
            "language, engine, org.benchwright.engine.plan,     ",
            "workshop, engine, org.benchwright.engine,          ",
            "workshop, ledger, org.benchwright.ledger.internal, org.benchwright.ledger.internal is internal to ledger",
            "ledger.tests, ledger, org.benchwright.ledger.internal, ",
            "workshop.tests, evidence, org.benchwright.evidence, ",
            "cli.tests, workshop.tests, org.benchwright.workshop.tests, ",
            "workshop.tests, cli.tests, org.benchwright.cli.tests, workshop.tests -> cli.tests is not drawn",
            "cli, workshop.tests, org.benchwright.workshop.tests, cli -> workshop.tests is not drawn",
            "workshop.tests, engine, org.benchwright.engine.internal, org.benchwright.engine.internal is internal to engine",
            "ledger.tests, engine, org.benchwright.engine,      ledger.tests -> engine is not drawn" })
    void aPackageThatIsOffLimitsIsNamed(String from, String to, String packageName, String words) {
        assertEquals(Optional.ofNullable(words), Arrows.OF_THE_PROJECT.objection(from, to, packageName));
    }

    @ParameterizedTest
    @CsvSource({
            "engine,   java.nio.file.Path,    engine must not touch a disk",
            "engine,   java.io.FileReader,    engine must not touch a disk",
            "ledger,   org.osgi.framework.Bundle, ledger must run without the platform",
            "present,  java.sql.Connection,   java.sql.Connection is for [ledger] only",
            "present,  java.awt.Frame,        present must do without a display",
            "workshop, java.awt.image.Raster, workshop must do without a display",
            "language, java.awt.Color,        language must do without a display" })
    void aForeignClassThatIsOffLimitsIsNamed(String bundle, String className, String words) {
        String objection = Foreign.objection(bundle, className).orElse("none");
        assertTrue(objection.startsWith(words), objection);
    }

    @Test
    void aForeignClassThatIsFreeIsNotNamed() {
        assertEquals(Optional.empty(), Foreign.objection("engine", "java.io.UncheckedIOException"));
        assertEquals(Optional.empty(), Foreign.objection("ledger", "java.sql.Connection"));
        assertEquals(Optional.empty(), Foreign.objection("present", "java.awt.image.BufferedImage"));
        assertEquals(Optional.empty(), Foreign.objection("language", "org.eclipse.xtext.resource.XtextResource"));
    }
}
