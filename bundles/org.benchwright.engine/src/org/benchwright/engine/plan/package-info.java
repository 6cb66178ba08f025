/** The plan: what a procedure compiles to, immutable, complete in itself, and kept in the ledger beside the procedure's text. */
package org.benchwright.engine.plan;
