package org.benchwright.engine.internal;

/**
 * A move whose derived event is on its way.
 *
 * @param target  where it goes
 * @param counted what is counted when it is taken
 */
record PendingMove(Spot target, String counted) {
}
