package org.benchwright.language.internal.server;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The addresses by which an editor names its texts, as files. */
final class Addresses {

    /** What no address can hold as it is (RFC 3986, section 2), and a percent sign that escapes nothing; some editors don't escape it. */
    private static final Pattern UNESCAPED = Pattern.compile("[^A-Za-z0-9\\-._~:/?#@!$&'()*+,;=%]|%(?![0-9A-Fa-f]{2})");

    private Addresses() {
    }

    static String of(Path file) {
        return file.toUri().toString();
    }

    /** The file of a text; nothing where it is none on a disk of this machine: one without a name yet, or one of another scheme. */
    static Optional<Path> file(String address) {
        if (!address.toLowerCase(Locale.ROOT).startsWith("file:")) {
            return Optional.empty();
        }
        try {
            Path file = Path.of(URI.create(escaped(address))).toAbsolutePath().normalize();
            return Optional.of(file).filter(path -> path.getParent() != null);
        } catch (IllegalArgumentException | FileSystemNotFoundException notOurs) {
            // On another machine, or nothing that could be a file; whoever sends it gets the answers of an empty text.
            return Optional.empty();
        }
    }

    private static String escaped(String address) {
        return UNESCAPED.matcher(address).replaceAll(found -> {
            StringBuilder escapes = new StringBuilder();
            for (byte each : found.group().getBytes(StandardCharsets.UTF_8)) {
                escapes.append(String.format("%%%02X", each));
            }
            return escapes.toString();
        });
    }
}
