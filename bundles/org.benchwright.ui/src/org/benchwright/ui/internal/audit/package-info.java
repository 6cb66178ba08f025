/** The Audit perspective: records and their sheets, what waits for a decision, the ledger check, figures and people. */
package org.benchwright.ui.internal.audit;
