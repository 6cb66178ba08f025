package org.benchwright.engine.plan;

import org.benchwright.core.SignalWord;

/**
 * A hazard with its three parts.
 *
 * @param name   its name in the procedure
 * @param signal the signal word
 * @param what   what is dangerous
 * @param can    what it can do
 * @param so     how to avoid it
 */
public record Hazard(String name, SignalWord signal, String what, String can, String so) {
}
