package org.benchwright.workshop;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.Signer;
import org.benchwright.workshop.internal.Message;

/**
 * Somebody who has signed in at this station with the full password. As long as the station stays unlocked, their signature under what they
 * carry out is given with a PIN or a badge; once it is locked, the key is forgotten, and only the full password opens it again.
 *
 * <p>Nothing of it is ever written down. May be used by several threads.
 */
public final class SignedIn implements AutoCloseable {

    /** The shortest PIN. */
    public static final int SHORTEST_PIN = 4;
    /** The station locks itself after as many wrong PINs. */
    public static final int WRONG_PINS = 3;
    private static final int SALT_BYTES = 16;

    private final String id;
    private final byte[] salt = new byte[SALT_BYTES];
    private final byte[] pin;
    private Optional<Signer> key;
    private int wrong;

    /**
     * @param id  who
     * @param key their opened key
     * @param pin digits, or what a badge reader types; not kept, and not blanked out here
     * @throws RefusedException if it is too short
     */
    SignedIn(String id, Signer key, char[] pin) throws RefusedException {
        if (pin.length < SHORTEST_PIN) {
            throw new RefusedException(Message.PIN_SHORT.text(String.valueOf(SHORTEST_PIN)));
        }
        new SecureRandom().nextBytes(salt);
        this.id = id;
        this.key = Optional.of(key);
        this.pin = hashed(pin);
    }

    /** Who has signed in. */
    public String id() {
        return id;
    }

    /** True once the key is forgotten: only the full password helps then. */
    public synchronized boolean locked() {
        return key.isEmpty();
    }

    /** Locks the station: the key is forgotten. */
    public synchronized void lock() {
        key = Optional.empty();
    }

    /**
     * The key, for a PIN.
     *
     * @throws RefusedException if the PIN is wrong, or the station is locked
     */
    public synchronized Signer key(char[] typed) throws RefusedException {
        if (key.isEmpty()) {
            throw new RefusedException(Message.STATION_LOCKED.text(id));
        }
        if (!MessageDigest.isEqual(pin, hashed(typed))) {
            wrong++;
            if (wrong >= WRONG_PINS) {
                lock();
                throw new RefusedException(Message.PIN_LOCKED.text(id));
            }
            throw new RefusedException(Message.PIN_WRONG.text(String.valueOf(WRONG_PINS - wrong)));
        }
        wrong = 0;
        return key.get();
    }

    /** A fast hash will do: it is never stored, and who reads this memory reads the key itself. */
    private byte[] hashed(char[] typed) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(salt);
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(CharBuffer.wrap(typed));
            digest.update(bytes);
            Arrays.fill(bytes.array(), (byte) 0);
            return digest.digest();
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("this Java lacks an algorithm", missing);
        }
    }

    @Override
    public void close() {
        lock();
    }
}
