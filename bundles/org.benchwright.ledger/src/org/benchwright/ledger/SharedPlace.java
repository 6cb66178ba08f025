package org.benchwright.ledger;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.regex.Pattern;
import org.benchwright.ledger.internal.Messages;

/**
 * Where a shared ledger is and how to get at it. Off this machine the connection is encrypted, and the server must show a certificate that
 * leads to the given one, or to one that the platform trusts, and is for this very host.
 *
 * @param url         {@code jdbc:postgresql://host:port/database} and nothing behind it
 * @param user        the login
 * @param password    its password
 * @param certificate file of the certificate to trust (PEM)
 * @param patience    how long to wait for an answer before the connection is given up; whole seconds, one at least
 */
public record SharedPlace(String url, String user, String password, Optional<Path> certificate, Duration patience) {

    private static final Pattern URL = Pattern.compile("jdbc:postgresql://([A-Za-z0-9.-]+|\\[[0-9A-Fa-f:]+\\])(:[0-9]{1,5})?/[A-Za-z0-9_-]+");
    private static final Pattern THIS_MACHINE = Pattern.compile("jdbc:postgresql://(localhost|127\\.0\\.0\\.1|\\[::1\\])[:/].*");

    private static final int LOCKED_FIFTHS = 4;

    /** How long to wait for an answer, if nothing else is said. */
    public static final Duration PATIENCE = Duration.ofSeconds(30);

    public SharedPlace {
        Objects.requireNonNull(url);
        Objects.requireNonNull(user);
        Objects.requireNonNull(password);
        Objects.requireNonNull(certificate);
        if (patience.toSeconds() < 1) {
            throw new IllegalArgumentException("patience of less than a second");
        }
    }

    /** A place with the usual patience, and no certificate but the platform's. */
    public SharedPlace(String url, String user, String password) {
        this(url, user, password, Optional.empty(), PATIENCE);
    }

    /** Whether {@code url} has the one form that is taken: no parameters, which could turn encryption off or name another host. */
    public static boolean isUrl(String url) {
        return URL.matcher(url).matches();
    }

    /**
     * What the driver needs.
     *
     * @throws LedgerUnreachableException when the address is none
     */
    Properties login() throws LedgerUnreachableException {
        if (!isUrl(url)) {
            throw new LedgerUnreachableException(Messages.text("notAnAddress", url.replaceFirst("\\?.*$", "")));
        }
        Properties login = new Properties();
        login.setProperty("user", user);
        login.setProperty("password", password);
        login.setProperty("connectTimeout", String.valueOf(patience.toSeconds()));
        login.setProperty("socketTimeout", String.valueOf(patience.toSeconds()));
        login.setProperty("loginTimeout", String.valueOf(patience.toSeconds()));
        // Somebody who holds the ledger up is told apart from a server that does not answer.
        login.setProperty("options", "-c lock_timeout=" + patience.toMillis() * LOCKED_FIFTHS / 5);
        login.setProperty("tcpKeepAlive", "true");
        login.setProperty("ApplicationName", "benchwright");
        if (!THIS_MACHINE.matcher(url).matches()) {
            login.setProperty("sslmode", "verify-full");
        }
        certificate.ifPresent(file -> login.setProperty("sslrootcert", file.toString()));
        return login;
    }

    @Override
    public String toString() {
        return user + " at " + url;
    }
}
