package org.benchwright.ui.internal.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

import org.benchwright.present.Bench;
import org.benchwright.present.MachineName;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/**
 * What the window works with.
 *
 * @param ledger     the ledger's file
 * @param procedures the folder of the procedures, if one was named and exists
 * @param technician initials that are offered first
 * @param station    the bench's name
 * @param demo       true on the demo folder: a new test is offered as a rehearsal
 * @param software   name and version of this program
 */
public record Settings(Path ledger, Optional<Path> procedures, String technician, String station, boolean demo,
        String software) {

    private static final String READY = "benchwright.ready";
    private static final String LEDGER = "benchwright.ledger";
    private static final String DEMO = "benchwright.demo";
    private static final String PROCEDURES = "benchwright.procedures";

    /** Settings from the start script's system properties and the environment. */
    static Settings of(Map<String, String> environment) {
        Path usual = Boolean.getBoolean(DEMO) ? Bench.demoLedger() : Bench.standardLedger();
        Path ledger = Optional.ofNullable(System.getProperty(LEDGER)).map(Path::of).orElse(usual);
        Optional<Path> procedures = Optional.ofNullable(System.getProperty(PROCEDURES)).map(Path::of).filter(Files::isDirectory)
                .map(folder -> folder.toAbsolutePath().normalize());
        String user = environment.getOrDefault("USER", environment.getOrDefault("USERNAME", ""));
        return new Settings(Bench.itself(ledger), procedures, user, MachineName.of(environment), Boolean.getBoolean(DEMO),
                "Benchwright " + version());
    }

    /** A file to be made once the window stands, for scripts that wait for it. */
    static Optional<Path> ready() {
        return Optional.ofNullable(System.getProperty(READY)).map(Path::of);
    }

    private static String version() {
        Version version = FrameworkUtil.getBundle(Settings.class).getVersion();
        return version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
    }
}
