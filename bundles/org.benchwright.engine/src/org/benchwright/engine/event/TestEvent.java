package org.benchwright.engine.event;

import org.benchwright.core.Actor;

/**
 * One event of a test.
 *
 * @param sequence from 1, without gaps
 * @param moment   when
 * @param actor    who told it; for a derived event, whose fact it was derived from
 * @param body     what
 */
public record TestEvent(long sequence, Moment moment, Actor actor, EventBody body) {
}
