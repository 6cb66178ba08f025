package org.benchwright.engine.plan;

/**
 * Something in the unit that the owner must not lose.
 *
 * @param name  its name in the family
 * @param title its title as people read it
 */
public record ProtectedItem(String name, String title) {
}
