package org.benchwright.ui.internal;

/**
 * Of several readings of the same thing, which may end in any order, only the one that was begun last is shown. Used by the display's thread
 * alone.
 */
public final class Latest {

    private long begun;

    /** A reading; see {@link Latest#begin}. */
    @FunctionalInterface
    public interface Reading {

        /** Shows what came of it, unless another was begun meanwhile. */
        void show(Runnable shown);
    }

    /** Begins a reading; what comes of those before it is not shown any more. */
    public Reading begin() {
        begun++;
        long mine = begun;
        return shown -> {
            if (mine == begun) {
                shown.run();
            }
        };
    }
}
