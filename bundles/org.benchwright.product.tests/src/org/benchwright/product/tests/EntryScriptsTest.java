package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the scripts for developers decide before they build anything, tried on a small made-up checkout in a folder with blanks in its name. */
class EntryScriptsTest {

    private static final Path RELENG = Path.of("..", "..", "releng");
    private static final String SOURCE = "bundles/org.benchwright.core/src/A.java";

    @TempDir
    private Path folder;
    private Path checkout;

    @BeforeEach
    void makeCheckout() throws Exception {
        checkout = Files.createDirectory(folder.resolve("a check out"));
        write("pom.xml", "<project/>");
        write(".mvn/maven.config", "-itr");
        write("README.md", "# Project");
        write("DEVELOPERS.md", "# Developers");
        write(SOURCE, "class A {}");
        write("features/f/feature.xml", "<feature/>");
        write("docs/README.md", "# Documentation");
        for (Path part : List.of(Path.of(""), Path.of("lib"))) {
            Files.createDirectories(checkout.resolve("releng").resolve(part));
            try (Stream<Path> scripts = Files.list(RELENG.resolve(part))) {
                for (Path script : scripts.filter(Files::isRegularFile).toList()) {
                    Files.copy(script, checkout.resolve("releng").resolve(part).resolve(script.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({ SOURCE, "bundles/org.benchwright.core/src/B.java", "bundles/org.benchwright.core/META-INF/MANIFEST.MF",
            "pom.xml", ".mvn/maven.config", "features/f/feature.xml", "releng/t/t.target",
            "docs/tutorials/t.md", "docs/screens/card.png", "README.md", "DEVELOPERS.md" })
    void aChangedOrNewSourceAsksForABuild(String file) throws Exception {
        String before = stamp();
        write(file, "changed");
        assertNotEquals(before, stamp());
    }

    @Test
    void aRemovedSourceAsksForABuild() throws Exception {
        write("bundles/org.benchwright.core/src/B.java", "class B {}");
        String before = stamp();
        Files.delete(checkout.resolve(SOURCE));
        assertNotEquals(before, stamp());
    }

    @Test
    void aRenamedSourceAsksForABuild() throws Exception {
        String before = stamp();
        Files.move(checkout.resolve(SOURCE), checkout.resolve(SOURCE).resolveSibling("B.java"));
        assertNotEquals(before, stamp());
    }

    @ParameterizedTest
    @CsvSource({ "bundles/org.benchwright.core/target/A.class", "bundles/org.benchwright.model/src-gen/G.java",
            "bundles/org.benchwright.core.tests/src/ATest.java", "bundles/org.benchwright.core/.polyglot.build",
            "procedures/demo.procedure" })
    void whatTheProductIsNotMadeFromAsksForNone(String file) throws Exception {
        String before = stamp();
        write(file, "something");
        assertEquals(before, stamp());
    }

    @Test
    void aSourceThatIsOnlyNewerAsksForNone() throws Exception {
        String before = stamp();
        Files.setLastModifiedTime(checkout.resolve(SOURCE), FileTime.from(Instant.parse("2031-01-01T00:00:00Z")));
        assertEquals(before, stamp());
    }

    @Test
    void aProductInUseIsKeptAndAnUnusedOneIsNot() throws Exception {
        for (String product : List.of("new", "running", "unused", "half-made")) {
            write(".bench/products/" + product + "/plugins/a.jar", "");
        }
        for (String product : List.of("new", "running", "unused")) {
            write(".bench/products/" + product + "/ready", "");
        }
        bash("exec 9<.bench/products/running/ready; flock -s 9; forget_unused_products new");
        assertEquals("new running", bash("cd .bench/products; echo *").out().strip());
    }

    @ParameterizedTest
    @CsvSource({ "17.0.15, 17", "21, 21", "1.8.0_392, 1" })
    void theJdkTellsItsVersion(String version, String major) throws Exception {
        write("jdk/release", "JAVA_VERSION=\"" + version + "\"\nOS_NAME=\"Linux\"\n");
        write("jdk/bin/javac", "");
        makeExecutable("jdk/bin/javac");
        assertEquals(major, bash("jdk_major jdk").out().strip());
    }

    @Test
    void aJdkWithoutACompilerIsNone() throws Exception {
        write("jre/release", "JAVA_VERSION=\"17.0.15\"\n");
        assertEquals("", bash("jdk_major jre").out());
    }

    @ParameterizedTest
    @CsvSource({ "unix:path=/run/b, other, yes", "'', bus, yes", "'', other, no" })
    void aSessionBusIsNamedOrWhereItUsuallyIs(String address, String socket, String there) throws Exception {
        try (ServerSocketChannel listening = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
            listening.bind(UnixDomainSocketAddress.of(checkout.resolve(socket)));
            assertEquals(there, bash("export DBUS_SESSION_BUS_ADDRESS=" + address
                    + " XDG_RUNTIME_DIR=$PWD; if has_session_bus; then echo yes; else echo no; fi").out().strip());
        }
    }

    @Test
    void whereNobodySitsAtATerminalABuildTellsNoParts() throws Exception {
        assertEquals("", bash("printf '[INFO] Building org.benchwright.core 0.1.0 [2/16]\\n' | tell_progress").out());
    }

    @Test
    void whoeverMayNotInstallIsToldTheOneLineToRun() throws Exception {
        for (String tool : List.of("bash", "dirname", "readlink", "sed", "find", "sort", "xargs", "sha256sum", "cut", "flock",
                "mkdir", "apt-get")) {
            write("tools/" + tool, "#!/bin/sh\nPATH=/usr/sbin:/usr/bin:/sbin:/bin exec " + tool + " \"$@\"\n");
            makeExecutable("tools/" + tool);
        }
        write("tools/id", "#!/bin/sh\necho 1000\n");
        makeExecutable("tools/id");
        Product.Ended ended = start(List.of("/bin/bash", "releng/bench", "--version"),
                Map.of("PATH", checkout.resolve("tools").toString(), "JAVA_HOME", System.getProperty("java.home")));
        assertEquals(2, ended.status(), ended.err());
        assertEquals("", ended.out());
        assertTrue(ended.err().endsWith("As root, run: apt-get install -y maven\n"), ended.err());
    }

    /** Whoever makes a slip is not to wait an hour for what was not meant. */
    @ParameterizedTest
    @CsvSource({"archives --help", "bench window a b", "campaign --nothing", "campaign 1 0", "campaign-all nothing", "campaign-all --seed x",
        "fuzz 1 0",
            "measure-all bench nothing", "measure-bench 0", "measure-figures 0", "measure-language x", "measure-records 9", "measure-start 0",
            "measure-watch 0", "measure-window x", "screenshots 150", "speed 99", "verify now"})
    void whatAScriptDoesNotTakeItSaysBeforeAnythingIsBuilt(String line) throws Exception {
        List<String> words = List.of(line.split(" "));
        List<String> command = new ArrayList<>(List.of("releng/" + words.get(0)));
        command.addAll(words.subList(1, words.size()));
        Product.Ended ended = start(command, Map.of("DISPLAY", ":0"));
        assertEquals(2, ended.status(), ended.out() + ended.err());
        assertEquals(1, ended.err().lines().count(), ended.err());
        assertFalse(Files.exists(checkout.resolve(".bench")), "nothing was begun");
    }

    @Test
    void withoutADisplayTheWindowIsRefusedAlsoByALinkFromAnotherFolder() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("window of the bench"), checkout.resolve("releng/bench"));
        Product.Ended ended = start(List.of(link.toString(), "window"), Map.of("DISPLAY", "", "WAYLAND_DISPLAY", ""), folder);
        assertEquals(2, ended.status(), ended.err());
        assertTrue(ended.err().startsWith("There is no display here for a window."), ended.err());
    }

    /** Maven's Tycho takes an option's line apart at its blanks, but not within quotes. */
    @Test
    void anOptionOfATestKeepsItsBlanks() throws Exception {
        write("maven", "#!/bin/sh\nprintf '%s\\n' \"$@\"\n");
        makeExecutable("maven");
        bash("maven=$PWD/maven; maven_runs_in=(env A=b); run_test ledger SomeTest log -Xmx1g \"-Dreport=$PWD/report\"");
        List<String> asked = Files.readAllLines(checkout.resolve("log"));
        assertTrue(asked.containsAll(List.of("bundles/org.benchwright.ledger.tests", "-Dtest=SomeTest")), asked.toString());
        assertEquals("-Dtycho.testArgLine=\"-Xmx1g\" \"-Dreport=" + checkout.toRealPath() + "/report\"", asked.get(asked.size() - 1));
    }

    private String stamp() throws Exception {
        Product.Ended ended = bash("source_stamp");
        assertTrue(ended.out().matches("[0-9a-f]{16}\n"), ended.out());
        return ended.out();
    }

    /** Runs lines that use the scripts' functions, in the made-up checkout. */
    private Product.Ended bash(String lines) throws Exception {
        Product.Ended ended = start(List.of("/bin/bash", "-euo", "pipefail", "-c", ". releng/lib/setup.sh\n" + lines), Map.of());
        assertEquals("", ended.err());
        assertEquals(0, ended.status());
        return ended;
    }

    private Product.Ended start(List<String> command, Map<String, String> environment) throws IOException, InterruptedException {
        return start(command, environment, checkout);
    }

    private Product.Ended start(List<String> command, Map<String, String> environment, Path workingFolder) throws IOException, InterruptedException {
        Path out = checkout.resolve(".out");
        Path err = checkout.resolve(".err");
        ProcessBuilder builder = new ProcessBuilder(command).directory(workingFolder.toFile())
                .redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().putAll(environment);
        int status = builder.start().waitFor();
        return new Product.Ended(status, Files.readString(out), Files.readString(err));
    }

    private void makeExecutable(String file) throws IOException {
        Files.setPosixFilePermissions(checkout.resolve(file), PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private void write(String file, String text) throws IOException {
        Path path = checkout.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
    }
}
