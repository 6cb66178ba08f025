package org.benchwright.core;

/** Is told how far a long piece of work has come. Called from the thread that works. */
public interface Progress {

    /**
     * The work begins.
     *
     * @param what what is being done, for people
     * @param total how many steps it has, 0 when that is not known
     */
    void begin(String what, long total);

    /**
     * Some more is done.
     *
     * @param steps how many steps since the last call
     */
    void advance(long steps);

    /** The work is over, whether or not it came to its end. */
    void end();

    /**
     * For callers who don't care.
     *
     * @return a progress that tells nobody
     */
    static Progress none() {
        return new Progress() {
            @Override
            public void begin(String what, long total) {
                // nobody is told
            }

            @Override
            public void advance(long steps) {
                // nobody is told
            }

            @Override
            public void end() {
                // nobody is told
            }
        };
    }
}
