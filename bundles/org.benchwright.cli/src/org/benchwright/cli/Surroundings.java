package org.benchwright.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;

import org.benchwright.present.Bench;
import org.benchwright.present.MachineName;

/**
 * Everything around a command, passed in so that tests bring their own.
 *
 * @param in            standard input
 * @param out           standard output; text is written in UTF-8
 * @param err           standard error
 * @param terminal      true if a person sits at a terminal
 * @param environment   environment variables
 * @param workingFolder what relative file names are relative to
 * @param procedures    the folder of the demo procedures, where there is one
 * @param clocks        the bench's clocks
 * @param zone          the zone in which times are shown
 * @param version       of this program
 */
public record Surroundings(InputStream in, OutputStream out, OutputStream err, boolean terminal, Map<String, String> environment,
        Path workingFolder, Optional<Path> procedures, Bench.Clocks clocks, ZoneId zone, String version) {

    public Surroundings {
        environment = Map.copyOf(environment);
    }

    /** Name and version of this program, as records keep them. */
    public String software() {
        return "Benchwright " + version;
    }

    /** Who is signed in on this machine. */
    public String user() {
        return environment.getOrDefault("USER", environment.getOrDefault("USERNAME", "technician"));
    }

    /** What this machine is called. */
    public String machine() {
        return MachineName.of(environment);
    }
}
