package org.benchwright.ledger.tests;

import com.fasterxml.jackson.core.JsonFactory;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Ledger;
import org.postgresql.Driver;
import org.sqlite.SQLiteConfig;

/** Another process on the same ledger, which can be killed. */
final class ChildJvm {

    private ChildJvm() {
    }

    /** Starts the main class with arguments; its standard output is to be read by the caller. */
    static Process start(Class<?> main, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xshare:auto",
                "-XX:TieredStopAtLevel=1", "-cp", classPath(), main.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }

    private static String classPath() {
        return Stream.of(ChildJvm.class, Ledger.class, Digest.class, JsonFactory.class, SQLiteConfig.class, Driver.class)
                .map(ChildJvm::place).distinct().collect(Collectors.joining(File.pathSeparator));
    }

    /** Where a class was loaded from; in a bundle that is still a project, its folder of classes. */
    private static String place(Class<?> type) {
        try {
            Path place = Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
            Path classes = place.resolve("target").resolve("classes");
            return (Files.isDirectory(classes) ? classes : place).toString();
        } catch (URISyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
