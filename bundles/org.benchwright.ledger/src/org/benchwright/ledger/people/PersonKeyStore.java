package org.benchwright.ledger.people;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.SecureRandom;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import javax.crypto.spec.PBEParameterSpec;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.FolderLock;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.Messages;

/**
 * The secret halves of people's keys: one PKCS#12 file for each key in the folder {@value #FOLDER} beside the ledger, named after the key
 * and not after its holder, readable by the bench's user only, encrypted with the holder's password (PBES2: PBKDF2 with HMAC-SHA-256,
 * AES-256). The format's other seal, over the whole file, is made with a word that everybody knows: it shows damage, and gives nothing to
 * try passwords on more cheaply.
 *
 * <p>A password is a {@code char[]} that its owner blanks out after use.
 */
public final class PersonKeyStore {

    /** Where the files lie, within the bench folder. */
    public static final String FOLDER = "people";

    /** The word of the seal over the whole file; no secret. */
    private static final String KNOWN = "benchwright";
    private static final String ALIAS = "key";
    private static final String PROTECTION = "PBEWithHmacSHA256AndAES_256";
    private static final int SALT_BYTES = 16;
    private static final int NAME_DIGITS = 16;
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final byte[] TRIAL = {'t', 'r', 'y'};

    private final Path folder;
    private final KeyProtection protection;
    private final InstantSource clock;

    /**
     * @param benchFolder the folder of the bench
     * @param protection  for new keys
     * @param clock       wall time
     */
    public PersonKeyStore(Path benchFolder, KeyProtection protection, InstantSource clock) {
        this.folder = benchFolder.resolve(FOLDER);
        this.protection = protection;
        this.clock = clock;
    }

    /**
     * Makes a key and keeps it under the password. It means nothing until it is entered in the register.
     *
     * @param person whose it will be, for whom a password made of the own name is refused
     * @throws KeyRefusedException when the password will not do, or the file can't be written
     */
    public Signer create(Person person, char[] password) throws KeyRefusedException {
        Optional<String> objection = objection(person, password);
        if (objection.isPresent()) {
            throw new KeyRefusedException(objection.get());
        }
        try {
            KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
            SignerKey key = SignerKey.of(pair.getPublic());
            Files.createDirectories(folder);
            DurableFiles.writePrivate(file(key), locked(pair, key, password));
            return new BenchKey(pair.getPrivate(), key);
        } catch (GeneralSecurityException missing) {
            throw new IllegalStateException("this Java lacks an algorithm", missing);
        } catch (IOException failure) {
            throw new KeyRefusedException(Messages.text("key.personFile", folder, failure.getMessage()), failure);
        }
    }

    /** What speaks against a password for a key of that person; nothing if it will do. */
    public Optional<String> objection(Person person, char[] password) {
        return PasswordRules.objection(password, person);
    }

    /** Deletes a key that was made and then not entered in the register. */
    public void discard(SignerKey key) {
        try {
            Files.deleteIfExists(file(key));
        } catch (IOException left) {
            // It opens nothing; why the key was not entered is what is to be told.
            return;
        }
    }

    private byte[] locked(KeyPair pair, SignerKey key, char[] password) throws GeneralSecurityException, IOException {
        byte[] salt = new byte[SALT_BYTES];
        new SecureRandom().nextBytes(salt);
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        Certificate[] chain = {SelfSigned.certificate(pair, key.fingerprint().hex(), clock.instant())};
        store.setEntry(ALIAS, new KeyStore.PrivateKeyEntry(pair.getPrivate(), chain),
                new KeyStore.PasswordProtection(password, PROTECTION, new PBEParameterSpec(salt, protection.iterations())));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        store.store(bytes, KNOWN.toCharArray());
        return bytes.toByteArray();
    }

    /**
     * Opens a key for signing.
     *
     * @param person whose key it is
     * @param key    its public half, as the register has it
     * @throws KeyRefusedException when the password is wrong, too many were before it, or the file is not there
     */
    @SuppressWarnings("try") // the lock is held, not used
    public Signer unlock(Person person, SignerKey key, char[] password) throws KeyRefusedException {
        Path file = file(key);
        if (!Files.exists(file)) {
            throw new KeyRefusedException(Messages.text("key.elsewhere", person.id(), file));
        }
        LockOut lockOut = new LockOut(folder.resolve(name(key) + ".tries"), clock);
        try (FolderLock lock = FolderLock.take(folder, PATIENCE)
                .orElseThrow(() -> new KeyRefusedException(Messages.text("folderBusy", folder)))) {
            lockOut.beginTry();
            Signer signer = opened(file, key, password);
            lockOut.succeeded();
            return signer;
        } catch (UnrecoverableKeyException wrong) {
            throw new KeyRefusedException(Messages.text("key.wrongPassword", person.id()), wrong);
        } catch (GeneralSecurityException | IOException unreadable) {
            throw new KeyRefusedException(Messages.text("key.personFile", file, unreadable.getMessage()), unreadable);
        }
    }

    private static Signer opened(Path file, SignerKey key, char[] password)
            throws GeneralSecurityException, IOException, KeyRefusedException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(new ByteArrayInputStream(Files.readAllBytes(file)), KNOWN.toCharArray());
        if (!(store.getKey(ALIAS, password) instanceof PrivateKey secret)) {
            throw new IOException("no key in it");
        }
        Signer signer = new BenchKey(secret, key);
        if (!key.verifies(TRIAL, signer.sign(TRIAL))) {
            throw new KeyRefusedException(Messages.text("key.otherFile", file, key));
        }
        return signer;
    }

    private Path file(SignerKey key) {
        return folder.resolve(name(key) + ".p12");
    }

    private static String name(SignerKey key) {
        return key.fingerprint().hex().substring(0, NAME_DIGITS);
    }
}
