package org.benchwright.ledger.people;

/**
 * How much work it is to try one password on a stolen key file.
 *
 * @param iterations rounds of PBKDF2 with HMAC-SHA-256, 1 or more
 */
public record KeyProtection(int iterations) {

    public KeyProtection {
        if (iterations < 1) {
            throw new IllegalArgumentException("rounds count from 1: " + iterations);
        }
    }

    /** 600 000 rounds, what the OWASP password storage cheat sheet asks of PBKDF2 with HMAC-SHA-256. */
    public static KeyProtection standard() {
        return new KeyProtection(600_000);
    }
}
