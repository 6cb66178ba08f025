package org.benchwright.workshop.internal;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;

import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.workshop.StoreException;

/**
 * The file in a bench folder that says where the shared ledger is. It holds no password: that is in a file for the owner only, or in the
 * environment.
 *
 * @param folder      the bench folder
 * @param url         address of the shared ledger
 * @param user        the bench's login
 * @param certificate file of the certificate to trust
 */
public record SharedSettings(Path folder, String url, String user, Optional<Path> certificate) {

    /** Name of the file with the settings. */
    public static final String FILE = "shared.properties";
    /** Name of the file with the password. */
    public static final String PASSWORD_FILE = "shared.password";
    /** Environment variable with the password, where there is no file. */
    public static final String PASSWORD_VARIABLE = "BENCHWRIGHT_SHARED_PASSWORD";

    private static final Set<String> KNOWN = Set.of("url", "user", "certificate");
    private static final Set<PosixFilePermission> OTHERS = Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE,
            PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE);

    /**
     * The settings beside a ledger; empty where no connection is set up.
     *
     * @throws StoreException if the file can't be read, or has something else in it
     */
    public static Optional<SharedSettings> beside(Path ledger) throws StoreException {
        Path folder = BenchFolder.of(ledger).path();
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        Properties found = new Properties();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            found.load(reader);
        } catch (IOException | IllegalArgumentException unreadable) {
            throw refused(Message.SHARED_UNREADABLE.text(file.toString()), unreadable);
        }
        for (String name : found.stringPropertyNames()) {
            if (!KNOWN.contains(name)) {
                throw refused(name.contains("password") ? Message.SHARED_PASSWORD_HERE.text(file.toString(), PASSWORD_FILE)
                        : Message.SHARED_UNKNOWN.text(file.toString(), name), new IllegalArgumentException(name));
            }
        }
        String url = found.getProperty("url", "").strip();
        String user = found.getProperty("user", "").strip();
        if (!SharedPlace.isUrl(url) || user.isEmpty()) {
            throw refused(Message.SHARED_INCOMPLETE.text(file.toString()), new IllegalArgumentException(url));
        }
        return Optional.of(new SharedSettings(folder, url, user,
                Optional.ofNullable(found.getProperty("certificate")).map(name -> folder.resolve(name.strip()))));
    }

    /**
     * The place with the bench's own login.
     *
     * @throws StoreException if there is no password, or others can read it
     */
    public SharedPlace place(Map<String, String> environment) throws StoreException {
        return new SharedPlace(url, user, password(environment), certificate, SharedPlace.PATIENCE);
    }

    /** The place with another login, such as its owner's. */
    public SharedPlace place(String owner, String password) {
        return new SharedPlace(url, owner, password, certificate, SharedPlace.PATIENCE);
    }

    private String password(Map<String, String> environment) throws StoreException {
        String told = environment.getOrDefault(PASSWORD_VARIABLE, "");
        if (!told.isEmpty()) {
            return told;
        }
        Path file = folder.resolve(PASSWORD_FILE);
        try {
            if (file.getFileSystem().supportedFileAttributeViews().contains("posix")
                    && Files.getPosixFilePermissions(file).stream().anyMatch(OTHERS::contains)) {
                throw refused(Message.SHARED_PASSWORD_OPEN.text(file.toString()), new IllegalStateException("others may read it"));
            }
            return Files.readString(file, StandardCharsets.UTF_8).strip();
        } catch (IOException unreadable) {
            throw refused(Message.SHARED_NO_PASSWORD.text(file.toString(), PASSWORD_VARIABLE), unreadable);
        }
    }

    private static StoreException refused(String words, Exception cause) {
        return new StoreException(words, cause);
    }
}
