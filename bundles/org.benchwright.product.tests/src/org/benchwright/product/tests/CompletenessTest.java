package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Both products, put together for three systems: nothing lacks, and nothing of another system is in them. */
class CompletenessTest {

    private static final String MAC = "macosx/cocoa/aarch64/Benchwright.app/Contents/Eclipse";
    private static final List<String> WIDGETS = List.of("org.eclipse.swt.gtk.linux.x86_64", "org.eclipse.swt.win32.win32.x86_64",
            "org.eclipse.swt.cocoa.macosx.aarch64");

    @ParameterizedTest
    @CsvSource({ "linux/gtk/x86_64, benchwright, bench, org.eclipse.swt.gtk.linux.x86_64",
            "win32/win32/x86_64, benchwright.cmd, bench.cmd, org.eclipse.swt.win32.win32.x86_64",
            MAC + ", benchwright.command, bench, org.eclipse.swt.cocoa.macosx.aarch64" })
    void theWindowHasItsScriptsAndTheWidgetsOfItsSystemAlone(String system, String window, String commands, String widgets) throws Exception {
        Path home = Product.home("org.benchwright.workbench", system);
        assertStarts(home.resolve(window), "-jar");
        assertStarts(home.resolve(commands), "org.benchwright.cli.application");
        assertEquals("org.benchwright.ui.product", configuration(home).getProperty("eclipse.product"));
        assertEquals(List.of(widgets), WIDGETS.stream().filter(fragment -> has(home, fragment)).toList());
        assertTrue(has(home, "org.benchwright.ui") && has(home, "org.benchwright.cli"));
        assertWhole(home);
    }

    @ParameterizedTest
    @CsvSource({ "linux/gtk/x86_64, bench", "win32/win32/x86_64, bench.cmd", MAC + ", bench" })
    void theCommandsHaveTheirScriptAndNothingOfTheWindow(String system, String script) throws Exception {
        Path home = Product.home("org.benchwright.headless", system);
        assertStarts(home.resolve(script), "org.benchwright.cli.application");
        assertEquals("org.benchwright.cli.application", configuration(home).getProperty("eclipse.application"));
        assertTrue(has(home, "org.benchwright.cli"));
        assertEquals(List.of(), plugins(home).stream()
                .filter(name -> name.matches("org\\.eclipse\\.(swt|jface|ui|e4)\\b.*|org\\.benchwright\\.ui_.*")).toList());
        assertWhole(home);
    }

    @ParameterizedTest
    @CsvSource({ "org.benchwright.headless", "org.benchwright.workbench" })
    void commandsRunByTheirScriptAndByALinkToIt(String product, @TempDir Path folder) throws Exception {
        Path script = Product.home(product, "linux/gtk/x86_64").resolve("bench");
        Path link = Files.createSymbolicLink(folder.resolve("a link"), script);
        for (Path started : List.of(script, link)) {
            Path out = folder.resolve("out");
            ProcessBuilder builder = new ProcessBuilder(started.toString(), "-configuration", folder.resolve("configuration").toString(), "--version")
                    .redirectOutput(out.toFile());
            builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
            assertEquals(0, builder.start().waitFor());
            assertTrue(Files.readString(out).matches("Benchwright \\d+\\.\\d+\\.\\d+\\R"), Files.readString(out));
        }
        Files.delete(link);
    }

    @Test
    void withoutADisplayTheWindowSaysSo(@TempDir Path folder) throws Exception {
        Path said = folder.resolve("said");
        ProcessBuilder builder = new ProcessBuilder(Product.home("org.benchwright.workbench", "linux/gtk/x86_64").resolve("benchwright").toString())
                .redirectError(said.toFile());
        builder.environment().putAll(Map.of("JAVA_HOME", System.getProperty("java.home"), "DISPLAY", "", "WAYLAND_DISPLAY", ""));
        assertEquals(2, builder.start().waitFor());
        assertTrue(Files.readString(said).startsWith("There is no display here for a window."), Files.readString(said));
    }

    @ParameterizedTest
    @CsvSource({ "JAVA_VERSION=\"11.0.2\", is an older one", "JAVA_VERSION=\"1.8.0_402\", is an older one", ", there is no" })
    void whoeverHasNoJava17IsTold(String release, String told, @TempDir Path folder) throws Exception {
        if (release != null) {
            Path java = folder.resolve("jdk/bin/java");
            Files.createDirectories(java.getParent());
            assertTrue(Files.createFile(java).toFile().setExecutable(true));
            Files.writeString(folder.resolve("jdk/release"), release + "\n");
        }
        for (String script : List.of("bench", "benchwright")) {
            Path said = folder.resolve(script + ".said");
            ProcessBuilder builder = new ProcessBuilder(Product.home("org.benchwright.workbench", "linux/gtk/x86_64").resolve(script).toString())
                    .redirectError(said.toFile());
            builder.environment().put("JAVA_HOME", folder.resolve("jdk").toString());
            assertEquals(2, builder.start().waitFor());
            String words = Files.readString(said);
            assertTrue(words.startsWith("Benchwright needs Java 17 or later, and ") && words.contains(told) && words.contains("JAVA_HOME"), words);
        }
    }

    @ParameterizedTest
    @CsvSource({ "linux/gtk/x86_64", "win32/win32/x86_64", MAC })
    void everyLibraryOfOthersIsNamedWithItsLicence(String system) throws Exception {
        Path home = Product.home("org.benchwright.workbench", system);
        assertTrue(Files.readString(home.resolve("README.txt")).contains("Needs Java 17 or later"));
        List<String[]> named = Files.readAllLines(home.resolve("LIBRARIES.txt")).stream()
                .filter(line -> line.matches("[a-z0-9.-]+ {2,}.+ {2,}(inside|https://\\S+)"))
                .map(line -> line.split(" {2,}")).toList();
        List<String> missing = new ArrayList<>();
        for (String library : plugins(home)) {
            if (!library.startsWith("org.benchwright.")) {
                Optional<String[]> row = named.stream().filter(each -> library.startsWith(each[0])).findFirst();
                if (row.isEmpty() || row.get()[2].equals("inside") && !hasLicence(home.resolve("plugins").resolve(library))) {
                    missing.add(library);
                }
            }
        }
        assertEquals(List.of(), missing);
    }

    @ParameterizedTest
    @CsvSource({ "org.benchwright.headless", "org.benchwright.workbench" })
    void allPagesOfTheManualAreInside(String product) throws Exception {
        Path home = Product.home(product, "linux/gtk/x86_64");
        Path docs = Path.of("..", "..", "docs").toAbsolutePath().normalize();
        Set<String> inside = new HashSet<>(entries(bundle(home, "org.benchwright.present")));
        inside.addAll(entries(bundle(home, "org.benchwright.language")));
        try (Stream<Path> pages = Files.walk(docs, FileVisitOption.FOLLOW_LINKS)) {
            assertEquals(List.of(), pages.filter(page -> page.toString().endsWith(".md")).map(page -> "docs/" + docs.relativize(page))
                    .filter(page -> !page.startsWith("docs/decisions/") && !inside.contains(page)).sorted().toList());
        }
    }

    @Test
    void onMacTheWindowIsOnTheFirstThread() throws Exception {
        assertStarts(Product.home("org.benchwright.workbench", MAC).resolve("benchwright.command"), "-XstartOnFirstThread");
    }

    /** As a strict reader of property lists sees it; the system's own is on a Mac only. */
    @Test
    void onMacTheWindowIsAnApplication() throws Exception {
        Path contents = Product.home("org.benchwright.workbench", MAC).getParent();
        DocumentBuilder reader = DocumentBuilderFactory.newInstance().newDocumentBuilder();
        reader.setEntityResolver((publicId, systemId) -> new InputSource(new StringReader("")));
        Element list = (Element) reader.parse(contents.resolve("Info.plist").toFile()).getDocumentElement().getElementsByTagName("dict").item(0);
        Map<String, String> said = new HashMap<>();
        List<Element> children = IntStream.range(0, list.getChildNodes().getLength()).mapToObj(list.getChildNodes()::item)
                .filter(Element.class::isInstance)
                .map(Element.class::cast).toList();
        for (int i = 0; i < children.size(); i += 2) {
            assertEquals("key", children.get(i).getTagName());
            said.put(children.get(i).getTextContent(), children.get(i + 1).getTextContent().strip());
        }
        assertEquals("APPL", said.get("CFBundlePackageType"));
        assertEquals("Benchwright", said.get("CFBundleName"));
        assertTrue(said.get("CFBundleIdentifier").matches("[a-z]+(\\.[a-z]+)+"), said.toString());
        assertTrue(said.get("CFBundleShortVersionString").matches("\\d+\\.\\d+\\.\\d+"), said.toString());
        assertEquals(said.get("CFBundleShortVersionString"), said.get("CFBundleVersion"));
        assertTrue(Files.isExecutable(contents.resolve("MacOS").resolve(said.get("CFBundleExecutable"))), said.toString());
    }

    /** Another Java and another system stand in: it is looked at what they are asked for. */
    @Test
    void onMacADoubleClickStartsTheWindowOrSaysWhatLacks(@TempDir Path folder) throws Exception {
        Path mac = Product.home("org.benchwright.workbench", MAC);
        Path script = mac.resolveSibling("MacOS").resolve("benchwright");
        standIn(folder.resolve("jdk/bin/java"), folder.resolve("java.asked"));
        standIn(folder.resolve("system/osascript"), folder.resolve("system.asked"));
        Files.writeString(folder.resolve("jdk/release"), "JAVA_VERSION=\"17.0.9\"\n");
        assertEquals(0, doubleClick(script, folder));
        String asked = Files.readString(folder.resolve("java.asked"));
        assertTrue(asked.startsWith("-XstartOnFirstThread\n") && asked.contains("\n" + mac.resolve("plugins/org.eclipse.equinox.launcher_")), asked);

        Files.writeString(folder.resolve("jdk/release"), "JAVA_VERSION=\"11.0.2\"\n");
        assertEquals(2, doubleClick(script, folder));
        assertTrue(Files.readString(folder.resolve("system.asked")).contains("Benchwright needs Java 17 or later, and "), "a box says it");
    }

    private static int doubleClick(Path script, Path folder) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(script.toString()).redirectErrorStream(true).redirectOutput(folder.resolve("said").toFile());
        builder.environment().put("JAVA_HOME", folder.resolve("jdk").toString());
        builder.environment().put("PATH", folder.resolve("system") + File.pathSeparator + System.getenv("PATH"));
        return builder.start().waitFor();
    }

    /** A program that writes down what it is given, an argument a line. */
    private static void standIn(Path program, Path asked) throws IOException {
        Files.createDirectories(program.getParent());
        Files.writeString(program, "#!/bin/sh\nprintf '%s\\n' \"$@\" >'" + asked + "'\n");
        assertTrue(program.toFile().setExecutable(true));
    }

    /** A script that names the launcher, and what else it must. */
    private static void assertStarts(Path script, String what) throws IOException {
        assertTrue(Files.isRegularFile(script), script + " is there");
        assertTrue(Files.isExecutable(script) || script.toString().endsWith(".cmd"), script + " can be run");
        String text = Files.readString(script);
        assertTrue(text.contains("org.eclipse.equinox.launcher_*.jar") && text.contains(what), text);
        String finder = script.toString().endsWith(".cmd") ? "find-java.cmd" : "find-java.sh";
        assertTrue(text.contains(finder) && Files.isRegularFile(script.resolveSibling(finder)), text);
    }

    /** Every bundle that is to be installed is there, the launcher among them. */
    private static void assertWhole(Path home) throws IOException {
        Path bundles = home.resolve("configuration/org.eclipse.equinox.simpleconfigurator/bundles.info");
        List<String> missing = Files.readAllLines(bundles).stream().filter(line -> !line.startsWith("#")).map(line -> line.split(",")[2])
                .filter(file -> !Files.exists(home.resolve(file))).toList();
        assertEquals(List.of(), missing);
        assertTrue(has(home, "org.eclipse.equinox.launcher"));
    }

    private static Properties configuration(Path home) throws IOException {
        Properties properties = new Properties();
        try (var in = Files.newInputStream(home.resolve("configuration/config.ini"))) {
            properties.load(in);
        }
        return properties;
    }

    /** A licence or notice in a library, which is a file or a folder. */
    private static boolean hasLicence(Path library) throws IOException {
        return entries(library).stream().anyMatch(entry -> entry.matches("(.*/)?(about\\.html|.*LICENSE[^/]*|NOTICE[^/]*|license[^/]*)"));
    }

    private static List<String> entries(Path library) throws IOException {
        if (Files.isDirectory(library)) {
            try (Stream<Path> files = Files.walk(library)) {
                return files.map(file -> library.relativize(file).toString()).toList();
            }
        }
        try (ZipFile jar = new ZipFile(library.toFile())) {
            return jar.stream().map(entry -> entry.getName()).toList();
        }
    }

    private static Path bundle(Path home, String bundle) throws IOException {
        String name = plugins(home).stream().filter(each -> each.startsWith(bundle + "_")).findFirst().orElseThrow();
        return home.resolve("plugins").resolve(name);
    }

    private static boolean has(Path home, String bundle) {
        try {
            return plugins(home).stream().anyMatch(name -> name.startsWith(bundle + "_"));
        } catch (IOException e) {
            throw new AssertionError(home + " can't be read", e);
        }
    }

    private static List<String> plugins(Path home) throws IOException {
        try (Stream<Path> plugins = Files.list(home.resolve("plugins"))) {
            return plugins.map(file -> file.getFileName().toString()).toList();
        }
    }
}
