package org.benchwright.ledger;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Duration;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchwright.ledger.internal.Messages;

/**
 * The bench key's files in a bench folder: {@value #SECRET_FILE}, readable by its owner only, and {@value #PUBLIC_FILE}, which the auditor
 * compares with a note of the fingerprint kept elsewhere.
 */
public final class BenchKeyStore {

    /** The secret half, with the public half beside it. */
    public static final String SECRET_FILE = "bench-key.pem";
    /** The public half. */
    public static final String PUBLIC_FILE = "bench-key.pub";

    /** A key's file has some hundred bytes. */
    private static final long LONGEST = 1 << 16;
    private static final String ALGORITHM = "Ed25519";
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final byte[] TRIAL = "benchwright.trial/1".getBytes(StandardCharsets.UTF_8);

    private BenchKeyStore() {
    }

    /**
     * The key of the bench in {@code folder}, made when there is none.
     *
     * @throws BenchKeyException when the files can't be read or written, do not belong together, or the secret one alone is missing
     */
    @SuppressWarnings("try") // the lock is held, not used
    public static BenchKey openOrCreate(Path folder) throws BenchKeyException {
        try (FolderLock lock = FolderLock.take(folder, PATIENCE)
                .orElseThrow(() -> new BenchKeyException(Messages.text("folderBusy", folder)))) {
            Path secretFile = folder.resolve(SECRET_FILE);
            Path publicFile = folder.resolve(PUBLIC_FILE);
            if (Files.exists(secretFile)) {
                return open(secretFile, publicFile);
            }
            if (Files.exists(publicFile)) {
                throw new BenchKeyException(Messages.text("key.secretMissing", secretFile, publicFile));
            }
            return create(secretFile, publicFile);
        } catch (IOException failure) {
            throw new BenchKeyException(Messages.text("key.files", folder, failure.getMessage()), failure);
        }
    }

    /**
     * The public half of the bench key in {@code folder}; empty when there is no file of it.
     *
     * @throws BenchKeyException when the file can't be read or holds no key
     */
    public static Optional<SignerKey> publicKey(Path folder) throws BenchKeyException {
        Path file = folder.resolve(PUBLIC_FILE);
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            return Optional.of(SignerKey.decode(block(content(file), "PUBLIC KEY"))
                    .orElseThrow(() -> new BenchKeyException(Messages.text("key.unreadable", file))));
        } catch (IOException | IllegalArgumentException failure) {
            throw new BenchKeyException(Messages.text("key.unreadable", file), failure);
        }
    }

    private static BenchKey create(Path secretFile, Path publicFile) throws IOException {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
            SignerKey key = SignerKey.of(pair.getPublic());
            String publicText = text("PUBLIC KEY", key.encoded());
            // The secret file first: should the power go now, the next start writes the public one from it.
            DurableFiles.writePrivate(secretFile,
                    (text("PRIVATE KEY", pair.getPrivate().getEncoded()) + publicText).getBytes(StandardCharsets.US_ASCII));
            DurableFiles.write(publicFile, publicText.getBytes(StandardCharsets.US_ASCII));
            return new BenchKey(pair.getPrivate(), key);
        } catch (GeneralSecurityException missing) {
            throw new IllegalStateException("this Java has no Ed25519", missing);
        }
    }

    private static BenchKey open(Path secretFile, Path publicFile) throws IOException, BenchKeyException {
        BenchKey bench = read(secretFile);
        if (!bench.key().verifies(TRIAL, bench.sign(TRIAL))) {
            throw new BenchKeyException(Messages.text("key.unreadable", secretFile));
        }
        Optional<SignerKey> published = publicKey(publicFile.toAbsolutePath().getParent());
        if (published.isEmpty()) {
            DurableFiles.write(publicFile, text("PUBLIC KEY", bench.key().encoded()).getBytes(StandardCharsets.US_ASCII));
        } else if (!published.get().equals(bench.key())) {
            throw new BenchKeyException(Messages.text("key.different", secretFile, publicFile));
        }
        return bench;
    }

    private static BenchKey read(Path secretFile) throws IOException, BenchKeyException {
        try {
            String text = content(secretFile);
            PrivateKey secret = KeyFactory.getInstance(ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(block(text, "PRIVATE KEY")));
            SignerKey key = SignerKey.decode(block(text, "PUBLIC KEY"))
                    .orElseThrow(() -> new BenchKeyException(Messages.text("key.unreadable", secretFile)));
            return new BenchKey(secret, key);
        } catch (GeneralSecurityException | IllegalArgumentException malformed) {
            throw new BenchKeyException(Messages.text("key.unreadable", secretFile), malformed);
        }
    }

    /** What stands at a key's place may be something that has no end. */
    private static String content(Path file) throws IOException, BenchKeyException {
        if (!Files.isRegularFile(file) || Files.size(file) > LONGEST) {
            throw new BenchKeyException(Messages.text("key.unreadable", file));
        }
        return Files.readString(file, StandardCharsets.US_ASCII);
    }

    private static String text(String label, byte[] der) {
        return "-----BEGIN " + label + "-----\n" + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(der) + "\n-----END " + label
                + "-----\n";
    }

    private static byte[] block(String text, String label) {
        Matcher block = Pattern.compile("-----BEGIN " + label + "-----([A-Za-z0-9+/=\\s]*)-----END " + label + "-----").matcher(text);
        if (!block.find()) {
            throw new IllegalArgumentException("no block " + label);
        }
        return Base64.getMimeDecoder().decode(block.group(1));
    }
}
