package org.benchwright.watch.internal;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.MessageDigest;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Instant;
import java.time.Period;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.watch.CannotSeeException;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateBuilder;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateGenerator;

/**
 * The bench's own certificate for OPC UA, made once, and those of units that somebody has looked at and trusts. A certificate that is not
 * among them is put aside for that look, and the connection refused.
 */
final class BenchCertificates {

    /** Names the bench towards OPC UA servers; the certificate has to state the same. */
    static final String APPLICATION_URI = "urn:benchwright:watch";
    private static final int KEY_BITS = 2048;
    private static final Period VALID = Period.ofYears(10);
    private static final Set<PosixFilePermission> OWNER_ONLY = PosixFilePermissions.fromString("rw-------");

    private final Path folder;

    BenchCertificates(Path folder) {
        this.folder = folder;
    }

    /**
     * @param keys        the key pair
     * @param certificate states its public part
     */
    record Own(KeyPair keys, X509Certificate certificate) {
    }

    /** The bench's own certificate; made if there is none. */
    synchronized Own own() throws CannotSeeException {
        Path key = folder.resolve("own-key.der");
        Path certificate = folder.resolve("own.der");
        try {
            if (!Files.exists(key) || !Files.exists(certificate)) {
                make(key, certificate);
            }
            X509Certificate read = read(certificate);
            KeyPair keys = new KeyPair(read.getPublicKey(),
                    KeyFactory.getInstance("RSA").generatePrivate(new PKCS8EncodedKeySpec(Files.readAllBytes(key))));
            return new Own(keys, read);
        } catch (Exception e) {
            // The library's builder declares any exception.
            throw new CannotSeeException(Message.SEE_OWN_CERTIFICATE.text(folder.toString(), String.valueOf(e.getMessage())), e);
        }
    }

    private void make(Path key, Path certificate) throws Exception {
        Files.createDirectories(folder);
        KeyPair keys = SelfSignedCertificateGenerator.generateRsaKeyPair(KEY_BITS);
        X509Certificate made = new SelfSignedCertificateBuilder(keys).setCommonName("Benchwright watch").setApplicationUri(APPLICATION_URI)
                .setValidityPeriod(VALID).build();
        write(key, keys.getPrivate().getEncoded(), true);
        write(certificate, made.getEncoded(), false);
    }

    private void write(Path file, byte[] content, boolean secret) throws IOException {
        Path fresh = Files.createTempFile(folder, "new", ".der");
        // The file is asked, not the disk it is on: in a system without a list of its mounts a disk is not to be found.
        if (secret && Files.getFileAttributeView(fresh, PosixFileAttributeView.class) != null) {
            Files.setPosixFilePermissions(fresh, OWNER_ONLY);
        }
        Files.write(fresh, content);
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * Refuses a certificate that is not trusted or not valid now.
     *
     * @param from where it was shown
     */
    void check(X509Certificate shown, String from, Instant now) throws CannotSeeException {
        if (now.isBefore(shown.getNotBefore().toInstant()) || now.isAfter(shown.getNotAfter().toInstant())) {
            throw new CannotSeeException(Message.SEE_EXPIRED.text(from, shown.getNotBefore().toInstant().toString(),
                    shown.getNotAfter().toInstant().toString()));
        }
        try {
            byte[] bytes = shown.getEncoded();
            if (trusted().stream().noneMatch(trusted -> Arrays.equals(trusted, bytes))) {
                String fingerprint = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
                Path refused = Files.createDirectories(folder.resolve("refused"));
                Path trusted = Files.createDirectories(folder.resolve("trusted"));
                write(refused.resolve(fingerprint + ".der"), bytes, false);
                throw new CannotSeeException(Message.SEE_UNTRUSTED.text(from, refused.toString(), fingerprint, trusted.toString()));
            }
        } catch (IOException | GeneralSecurityException e) {
            throw new CannotSeeException(Message.SEE_OWN_CERTIFICATE.text(folder.toString(), String.valueOf(e.getMessage())), e);
        }
    }

    private List<byte[]> trusted() throws IOException {
        Path trusted = folder.resolve("trusted");
        if (!Files.isDirectory(trusted)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(trusted)) {
            return files.flatMap(file -> encoded(file).stream()).toList();
        }
    }

    /** A file that is no certificate is passed over: it can't make anything trusted. */
    private static Optional<byte[]> encoded(Path file) {
        try {
            return Optional.of(read(file).getEncoded());
        } catch (IOException | CertificateException e) {
            return Optional.empty();
        }
    }

    private static X509Certificate read(Path file) throws IOException, CertificateException {
        byte[] bytes = Files.readAllBytes(file);
        return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(bytes));
    }
}
