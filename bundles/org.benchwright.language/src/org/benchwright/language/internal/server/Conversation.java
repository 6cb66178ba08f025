package org.benchwright.language.internal.server;

import java.util.Optional;

import org.benchwright.language.internal.InternalText;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/** Where the conversation with an editor stands: the protocol wants nothing answered before it says initialize, and after it says shutdown. */
final class Conversation {

    private volatile Stand stand = Stand.NOT_BEGUN;

    private enum Stand {
        NOT_BEGUN, OPEN, OVER
    }

    void begin() {
        stand = Stand.OPEN;
    }

    void end() {
        stand = Stand.OVER;
    }

    boolean isOpen() {
        return stand == Stand.OPEN;
    }

    boolean isOver() {
        return stand == Stand.OVER;
    }

    /** What a question is answered now; nothing where it is to be answered as asked. */
    Optional<ResponseError> refusal() {
        return switch (stand) {
            case NOT_BEGUN -> Optional.of(new ResponseError(ResponseErrorCode.ServerNotInitialized, InternalText.NOT_BEGUN.text(), null));
            case OPEN -> Optional.empty();
            case OVER -> Optional.of(new ResponseError(ResponseErrorCode.InvalidRequest, InternalText.ALREADY_OVER.text(), null));
        };
    }
}
