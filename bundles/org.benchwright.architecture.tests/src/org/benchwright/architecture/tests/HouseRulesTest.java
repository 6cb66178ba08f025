package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;

/** Rules of the house that no compiler checks. */
class HouseRulesTest {

    private static final int LINES_ON_A_SCREEN = 50;
    static final Pattern ONE_SENTENCE = Pattern.compile("/\\*\\*[^.!?]+(?:[.!?]\\S+[^.!?]*)*[.!?]\\s*\\*/\\s*package ");
    private static final Pattern CLASS_ATTRIBUTE = Pattern.compile("\\bclass=\"([^\":]+)");

    @Test
    void everyPackageSaysWhatItIsFor() {
        List<Path> packages = Checkout.sourceFolders().stream()
                .flatMap(source -> Checkout.filesBelow(source, ".java").stream())
                .map(Path::getParent)
                .distinct()
                .toList();
        assertFalse(packages.isEmpty(), "no package was found");
        assertEquals(List.of(), packages.stream().filter(folder -> !Files.exists(folder.resolve("package-info.java"))).toList());
    }

    @Test
    void everyPackageDoesItInOneSentence() {
        List<String> others = Checkout.sourceFolders().stream()
                .flatMap(source -> Checkout.filesBelow(source, "package-info.java").stream())
                .map(HouseRulesTest::read)
                .filter(text -> !ONE_SENTENCE.matcher(text).lookingAt())
                .toList();
        assertEquals(List.of(), others);
    }

    @Test
    void textsAreLookedUpInOnePlace() {
        assertEquals(List.of("org.benchwright.core.Texts"), CompiledClasses.ALL.thatUse("java.util.ResourceBundle"));
    }

    @Test
    void everyTextIsShown() {
        assertEquals(List.of(), CompiledClasses.ALL.textsThatNobodyShows());
    }

    @Test
    void everyMethodIsCalled() {
        assertEquals(List.of(), CompiledClasses.ALL.methodsThatNobodyCalls());
    }

    @Test
    void everyMethodFitsOnAScreen() {
        assertEquals(List.of(), CompiledClasses.ALL.methodsLongerThan(LINES_ON_A_SCREEN));
    }

    @Test
    void everyPictureIsUsed() {
        Path window = Path.of("..", "org.benchwright.ui");
        StringBuilder text = new StringBuilder(read(window.resolve("plugin.xml")));
        Checkout.filesBelow(window.resolve("src"), ".java").forEach(file -> text.append(read(file)));
        List<String> pictures = Checkout.filesBelow(window.resolve("icons"), ".svg").stream()
                .map(file -> file.getFileName().toString().replace(".svg", "")).toList();
        assertFalse(pictures.isEmpty());
        assertEquals(List.of(), pictures.stream().filter(picture -> !isNamed(picture, text)).toList());
    }

    /** By its whole name, or by what stands before a hyphen where the rest is worked out. */
    private static boolean isNamed(String picture, CharSequence text) {
        String family = picture.replaceFirst("-.*", "-");
        return Pattern.compile("icons/" + picture + "\\.svg|\"" + picture + "\"|\"" + family + "\"").matcher(text).find();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyClassNamedInAnExtensionExists() throws Exception {
        int named = 0;
        for (Path bundle : Checkout.bundles()) {
            Path extensions = bundle.resolve("plugin.xml");
            if (Files.exists(extensions)) {
                List<String> names = CLASS_ATTRIBUTE.matcher(Files.readString(extensions)).results()
                        .map(MatchResult::group).map(text -> text.substring("class=\"".length())).toList();
                named += names.size();
                assertEquals(List.of(), names.stream().filter(name -> !isCompiled(bundle, name)).toList(),
                        extensions.toString());
            }
        }
        assertFalse(named == 0, "no extension was found");
    }

    private static boolean isCompiled(Path bundle, String className) {
        return Files.exists(bundle.resolve("target/classes").resolve(className.replace('.', '/') + ".class"));
    }

    @Test
    void onlyTheCommandLinePrints() {
        assertEquals(List.of(), CompiledClasses.ALL.thatPrint());
    }

    @Test
    void noStaticFieldCanBeSetAgain() {
        assertEquals(List.of(), CompiledClasses.ALL.mutableStatics());
    }

    @Test
    void everyTestHasANameThatTheRunnerPicksUp() {
        assertEquals(List.of(), CompiledClasses.ALL.testsThatNeverRun());
    }

    @Test
    void everyPropertyIsRun() {
        assertEquals(List.of(), CompiledClasses.ALL.propertiesThatNeverRun());
    }
}
