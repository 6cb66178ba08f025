package org.benchwright.core;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;

import org.benchwright.core.internal.Message;

/**
 * A SHA-256 digest (FIPS 180-4): the identity of some content.
 *
 * @param hex 64 hexadecimal digits in lower case; there is one way only to write a digest
 */
public record Digest(String hex) {

    private static final Pattern FORM = Pattern.compile("[0-9a-f]{64}");
    private static final int LONGEST_SHOWN = 80;

    /**
     * Checks the form.
     *
     * @throws IllegalArgumentException when it is no digest
     */
    public Digest {
        if (!FORM.matcher(hex).matches()) {
            String shown = hex.length() > LONGEST_SHOWN ? hex.substring(0, LONGEST_SHOWN) : hex;
            throw new IllegalArgumentException(Message.DIGEST_FORM.text(shown));
        }
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
        return new Digest(HexFormat.of().formatHex(digest));
    }

    /**
     * Reads a digest.
     *
     * @param hex 64 hexadecimal digits in lower case
     * @return the digest
     * @throws IllegalArgumentException when it is no digest
     */
    public static Digest parse(String hex) {
        return new Digest(hex);
    }

    /**
     * The digest's bytes.
     *
     * @return a new array of 32 bytes
     */
    public byte[] bytes() {
        return HexFormat.of().parseHex(hex);
    }

    /**
     * The digest in hexadecimal digits.
     *
     * @return {@link #hex()}
     */
    @Override
    public String toString() {
        return hex;
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
