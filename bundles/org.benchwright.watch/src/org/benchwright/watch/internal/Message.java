package org.benchwright.watch.internal;

import org.benchwright.core.Texts;

/** Texts of the watch, from {@code messages.properties}. */
public enum Message {
    ENDPOINT_NOT_UNDERSTOOD, ENDPOINT_NUMBER, ENDPOINT_TIME, SEE_TOO_SLOW, SEE_FAILED, SEE_ENDED, SEE_SIMULATED_SILENCE, SEE_NO_ANSWER, SEE_REFUSED,
    SEE_NO_WAY, SEE_UNKNOWN_HOST, SEE_LOST, SEE_EXCEPTION, SEE_EXCEPTION_OF_UNIT,
    SEE_EXCEPTION_OF_GATEWAY, SEE_OTHER_UNIT, SEE_AMOUNT, SEE_GARBLED, SEE_NO_SERVER_STATE, SEE_OPC_NO_REGISTERS, SEE_BAD_NODE, SEE_NO_NUMBER,
    SEE_NO_SECURITY, SEE_UNTRUSTED, SEE_EXPIRED, SEE_OWN_CERTIFICATE, SEE_OPC_STATUS;

    private static final Texts TEXTS = Texts.beside(Message.class, "messages");

    /** The text with its places filled. */
    public String text(Object... arguments) {
        return TEXTS.text(name(), arguments);
    }
}
