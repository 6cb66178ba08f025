package org.benchwright.cli.internal;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Passes everything on, and keeps in mind why it could not: whoever prints through it does not hear of that. */
final class KeptFailure extends FilterOutputStream {

    private volatile Optional<IOException> failure = Optional.empty();

    KeptFailure(OutputStream out) {
        super(out);
    }

    /** Why something was lost; nothing if all was written so far. */
    Optional<IOException> failure() {
        return failure;
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            failure = Optional.of(e);
            throw e;
        }
    }

    @Override
    public void flush() throws IOException {
        try {
            out.flush();
        } catch (IOException e) {
            failure = Optional.of(e);
            throw e;
        }
    }
}
