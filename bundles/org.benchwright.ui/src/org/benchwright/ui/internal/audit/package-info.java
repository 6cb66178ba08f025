/** The Audit perspective: records, the record sheet, and the ledger check. */
package org.benchwright.ui.internal.audit;
