package org.benchwright.engine.internal;

/** Whether everything live has to be switched off before the test goes on. */
enum SwitchOff {
    NOTHING,
    /** Power was lost, or it is not known that it was kept: nobody knows where the switches stand. */
    BEFORE_POWER_UP,
    /** Make safe is done, but something is live still. */
    BEFORE_THE_END
}
