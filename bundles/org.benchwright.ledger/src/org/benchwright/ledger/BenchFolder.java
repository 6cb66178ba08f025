package org.benchwright.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a bench keeps its ledger, its key and its attachments. It is a folder of its own, outside of any workspace, so that window and
 * terminal can use it at once.
 *
 * @param path the folder, which may not exist yet
 */
public record BenchFolder(Path path) {

    public BenchFolder {
        Objects.requireNonNull(path);
    }

    /** The folder of this user on this machine. */
    public static BenchFolder standard() {
        return standard(System.getProperty("os.name"), System.getenv(), Path.of(System.getProperty("user.home")));
    }

    /**
     * The folder that the customs of an operating system give: the local application data on Windows, Application Support on macOS, the
     * XDG data home elsewhere.
     *
     * @param system      name of the operating system, as Java tells it
     * @param environment its environment variables
     * @param home        the user's home folder
     */
    public static BenchFolder standard(String system, Map<String, String> environment, Path home) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            String local = environment.getOrDefault("LOCALAPPDATA", "");
            return new BenchFolder((local.isEmpty() ? home.resolve("AppData").resolve("Local") : Path.of(local)).resolve("Benchwright"));
        }
        if (name.startsWith("mac")) {
            return new BenchFolder(home.resolve("Library").resolve("Application Support").resolve("Benchwright"));
        }
        Path data = Path.of(environment.getOrDefault("XDG_DATA_HOME", ""));
        // The XDG base directory specification asks to ignore a relative path.
        return new BenchFolder((data.isAbsolute() ? data : home.resolve(".local").resolve("share")).resolve("benchwright"));
    }

    /** The folder in which a ledger file lies, not a link to it; of a root, which lies in none, itself. */
    public static BenchFolder of(Path ledgerFile) {
        Path whole = file(ledgerFile);
        return new BenchFolder(Optional.ofNullable(whole.getParent()).orElse(whole));
    }

    /** The ledger's file itself. Where a link leads to it, its key and its attachments are not beside the link. */
    public static Path file(Path ledger) {
        Path whole = ledger.toAbsolutePath().normalize();
        try {
            return Files.isSymbolicLink(whole) ? whole.toRealPath() : whole;
        } catch (IOException leadsNowhere) {
            return whole;
        }
    }

    /** The ledger in this folder. */
    public Path ledgerFile() {
        return path.resolve("bench.ledger");
    }
}
