package org.benchwright.present;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** What this machine is called: so its station is called in records, where nothing else was said. */
public final class MachineName {

    private static final Path OF_LINUX = Path.of("/proc/sys/kernel/hostname");
    private static final String UNKNOWN = "bench";

    private MachineName() {
    }

    /**
     * The name that the environment tells, else the one that the system tells: shells know it and seldom hand it on, and two benches of one name
     * would each be proved by the other's known-good unit.
     *
     * @param environment variables of the environment
     * @return the name, or {@code bench} where nobody knows it
     */
    public static String of(Map<String, String> environment) {
        return Stream.of("HOSTNAME", "COMPUTERNAME").map(environment::get).filter(Objects::nonNull).filter(name -> !name.isBlank()).findFirst()
                .or(MachineName::ofSystem).orElse(UNKNOWN);
    }

    private static Optional<String> ofSystem() {
        try {
            String name = Files.isReadable(OF_LINUX) ? Files.readString(OF_LINUX).strip() : InetAddress.getLocalHost().getHostName();
            return Optional.of(name).filter(told -> !told.isBlank());
        } catch (IOException unknown) {
            return Optional.empty();
        }
    }
}
