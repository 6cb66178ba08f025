package org.benchwright.language.internal.server;

import java.lang.reflect.InvocationTargetException;
import java.util.concurrent.CompletionException;

import org.benchwright.language.internal.InternalText;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;

/** What an editor is answered where a request failed: a code and words, and nothing from inside. */
public final class ServerFailures {

    private static final System.Logger PLATFORM = System.getLogger("org.benchwright.language");

    private ServerFailures() {
    }

    /** Takes from answers that the protocol's own library makes what it adds from inside: names of classes and methods. */
    public static MessageConsumer withoutInside(MessageConsumer next) {
        return message -> {
            if (message instanceof ResponseMessage answer && answer.getError() != null) {
                answer.getError().setData(null);
            }
            next.consume(message);
        };
    }

    /** The answer: as the failed work words it, or that the server has no such method, or that the fault is ours, which is logged. */
    public static ResponseError answer(Throwable failure) {
        Throwable cause = failure;
        while ((cause instanceof CompletionException || cause instanceof InvocationTargetException) && cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (cause instanceof ResponseErrorException worded) {
            return worded.getResponseError();
        } else if (cause instanceof UnsupportedOperationException) {
            return new ResponseError(ResponseErrorCode.MethodNotFound, InternalText.NO_SUCH_METHOD.text(), null);
        }
        PLATFORM.log(System.Logger.Level.ERROR, "a request of an editor failed", cause);
        return new ResponseError(ResponseErrorCode.InternalError, InternalText.REQUEST_FAILED.text(), null);
    }
}
