package org.benchwright.workshop;

import org.benchwright.engine.plan.Plan;

/**
 * A procedure ready to be carried out.
 *
 * @param plan what it compiled to
 * @param text its text with all that it refers to; kept in the ledger beside the plan
 */
public record CompiledProcedure(Plan plan, String text) {
}
