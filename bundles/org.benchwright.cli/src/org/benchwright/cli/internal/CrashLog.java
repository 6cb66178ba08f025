package org.benchwright.cli.internal;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.present.Bench;

/** Keeps what a developer needs of a failure that nobody expected; the user gets one line. */
final class CrashLog {

    private CrashLog() {
    }

    /** Writes the failure into a file of the bench folder, or of the folder for temporary files. */
    static Optional<Path> write(Throwable failure, Instant now) {
        StringWriter text = new StringWriter();
        text.append(now.toString()).append(System.lineSeparator());
        failure.printStackTrace(new PrintWriter(text, true));
        Optional<Path> beside = write(text.toString(), Optional.ofNullable(Bench.standardLedger().getParent()));
        return beside.isPresent() ? beside : write(text.toString(), Optional.of(Path.of(System.getProperty("java.io.tmpdir"))));
    }

    private static Optional<Path> write(String text, Optional<Path> folder) {
        try {
            Files.createDirectories(folder.orElseThrow(IOException::new));
            Path file = Files.createTempFile(folder.get(), "benchwright-error-", ".log");
            Files.writeString(file, text, StandardCharsets.UTF_8);
            return Optional.of(file);
        } catch (IOException e) {
            // The next folder is tried; without any, the line on the screen is all there is.
            return Optional.empty();
        }
    }
}
