package org.benchwright.core;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

import org.benchwright.core.internal.Message;

/** A SHA-256 digest (FIPS 180-4): the identity of some content. There is one way only to write it: 64 hexadecimal digits in lower case. */
public final class Digest {

    /** Length in bytes. */
    public static final int LENGTH = 32;

    private static final int LONGEST_SHOWN = 80;

    private final byte[] value;

    private Digest(byte[] value) {
        this.value = value;
    }

    /**
     * Reckons the digest of some content.
     *
     * @param content any bytes
     * @return their digest
     */
    public static Digest of(byte[] content) {
        return ofResult(sha256().digest(content));
    }

    /**
     * Reckons the digest of a stream's content up to its end. The stream stays open.
     *
     * @param content any bytes
     * @return their digest
     * @throws IOException when the stream can't be read
     */
    public static Digest of(InputStream content) throws IOException {
        MessageDigest sha256 = sha256();
        byte[] buffer = new byte[8192];
        for (int read = content.read(buffer); read >= 0; read = content.read(buffer)) {
            sha256.update(buffer, 0, read);
        }
        return ofResult(sha256.digest());
    }

    /**
     * Takes over a digest that was reckoned elsewhere.
     *
     * @param digest 32 bytes
     * @return the digest
     * @throws IllegalArgumentException when the length is another
     */
    public static Digest ofResult(byte[] digest) {
        if (digest.length != LENGTH) {
            throw malformed(HexFormat.of().formatHex(digest));
        }
        return new Digest(digest.clone());
    }

    /**
     * Reads a digest.
     *
     * @param hex 64 hexadecimal digits in lower case
     * @return the digest
     * @throws IllegalArgumentException when it is no digest
     */
    public static Digest parse(String hex) {
        if (!isDigest(hex)) {
            throw malformed(hex);
        }
        return new Digest(HexFormat.of().parseHex(hex));
    }

    /**
     * Reads a digest out of a text that may be anything.
     *
     * @param text any text
     * @return the digest; empty when it is none
     */
    public static Optional<Digest> find(String text) {
        return isDigest(text) ? Optional.of(parse(text)) : Optional.empty();
    }

    /**
     * The digest's bytes.
     *
     * @return a new array of 32 bytes
     */
    public byte[] bytes() {
        return value.clone();
    }

    /** The digest in 64 hexadecimal digits, in lower case. */
    public String hex() {
        return HexFormat.of().formatHex(value);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Digest that && Arrays.equals(value, that.value);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(value);
    }

    /**
     * The digest in hexadecimal digits.
     *
     * @return {@link #hex()}
     */
    @Override
    public String toString() {
        return hex();
    }

    private static IllegalArgumentException malformed(String hex) {
        String shown = hex.length() > LONGEST_SHOWN ? hex.substring(0, LONGEST_SHOWN) : hex;
        return new IllegalArgumentException(Message.DIGEST_FORM.text(shown));
    }

    private static boolean isDigest(String text) {
        return text.length() == 2 * LENGTH && hexadecimal(text);
    }

    private static boolean hexadecimal(String text) {
        for (int i = 0; i < text.length(); i++) {
            char digit = text.charAt(i);
            if ((digit < '0' || digit > '9') && (digit < 'a' || digit > 'f')) {
                return false;
            }
        }
        return true;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            // Every Java platform has to bring SHA-256.
            throw new IllegalStateException(impossible);
        }
    }
}
