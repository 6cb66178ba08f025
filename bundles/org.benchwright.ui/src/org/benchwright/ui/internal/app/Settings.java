package org.benchwright.ui.internal.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

import org.benchwright.present.Bench;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/**
 * What the window works with.
 *
 * @param ledger     the ledger's file
 * @param procedures the folder of the procedures, if one was named and exists
 * @param technician initials that are offered first
 * @param station    the bench's name
 * @param software   name and version of this program
 */
public record Settings(Path ledger, Optional<Path> procedures, String technician, String station, String software) {

    private static final String LEDGER = "benchwright.ledger";
    private static final String PROCEDURES = "benchwright.procedures";

    /** Settings from the start script's system properties and the environment. */
    static Settings of(Map<String, String> environment) {
        Path ledger = Optional.ofNullable(System.getProperty(LEDGER)).map(Path::of).orElseGet(Bench::standardLedger);
        Optional<Path> procedures = Optional.ofNullable(System.getProperty(PROCEDURES)).map(Path::of).filter(Files::isDirectory)
                .map(folder -> folder.toAbsolutePath().normalize());
        String user = environment.getOrDefault("USER", environment.getOrDefault("USERNAME", ""));
        String machine = environment.getOrDefault("HOSTNAME", environment.getOrDefault("COMPUTERNAME", "bench"));
        return new Settings(ledger.toAbsolutePath().normalize(), procedures, user, machine, "Benchwright " + version());
    }

    private static String version() {
        Version version = FrameworkUtil.getBundle(Settings.class).getVersion();
        return version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
    }
}
