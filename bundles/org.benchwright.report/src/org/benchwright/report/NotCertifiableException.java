package org.benchwright.report;

/** There is no certificate of this test; the message says why. */
public final class NotCertifiableException extends Exception {

    private static final long serialVersionUID = 1L;

    /** @param words why */
    public NotCertifiableException(String words) {
        super(words);
    }
}
