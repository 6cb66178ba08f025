package org.benchwright.language.internal.flow;

import java.util.Set;

import org.benchwright.model.Value;

/**
 * What is known at a place, whichever way led there. Never changes.
 *
 * @param mayBeOn      on some way the supply is on
 * @param hazardShown  on every way a hazard to people was shown
 * @param recorded     names of the kept items that were entered on every way
 * @param measured     of the values that others are derived from, those that were measured on every way
 */
public record FlowState(boolean mayBeOn, boolean hazardShown, Set<String> recorded, Set<Value> measured) {
}
