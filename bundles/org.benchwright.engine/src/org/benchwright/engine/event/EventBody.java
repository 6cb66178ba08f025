package org.benchwright.engine.event;

/** What an event says. */
public sealed interface EventBody permits Fact, Derived {
}
