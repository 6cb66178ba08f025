package org.benchwright.engine.plan;

import org.benchwright.core.Limits;

/**
 * A condition around a soak.
 *
 * @param name   what is read, such as {@code ambient}
 * @param limits where it must lie
 */
public record Condition(String name, Limits limits) {
}
