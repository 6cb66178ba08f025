package org.benchwright.language.internal.editing;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Supplier;

import org.benchwright.core.Cancellation;
import org.eclipse.xtext.service.OperationCanceledManager;
import org.eclipse.xtext.util.CancelIndicator;

/**
 * Lets one thread at a time at the trees of a folder, for even reading changes them. Somebody who types or points goes first: long
 * work gives way to him and begins again afterwards.
 */
final class Turns {

    private final ReentrantLock lock = new ReentrantLock(true);
    private final AtomicInteger waiting = new AtomicInteger();
    private final OperationCanceledManager cancelling = new OperationCanceledManager();

    /** Does short work as soon as it may be. */
    <T> T now(Supplier<T> work) {
        waiting.incrementAndGet();
        lock.lock();
        waiting.decrementAndGet();
        try {
            return work.get();
        } finally {
            lock.unlock();
        }
    }

    /**
     * Does long work, giving way to short work.
     *
     * @param work is begun again whenever it had to give way
     * @throws CancellationException if cancelled
     */
    <T> T patiently(Cancellation cancellation, Function<CancelIndicator, T> work) {
        CancelIndicator stop = () -> cancellation.requested() || waiting.get() > 0;
        while (!cancellation.requested()) {
            lock.lock();
            try {
                return work.apply(stop);
            } catch (RuntimeException | Error thrown) {
                if (!cancelling.isOperationCanceledException(thrown)) {
                    throw thrown;
                }
                // Somebody waits, or it was cancelled: the loop tells which.
            } finally {
                lock.unlock();
            }
        }
        throw new CancellationException();
    }
}
