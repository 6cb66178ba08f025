/** Finding what was changed: pure checks of single rows, and the walk that feeds them from a ledger file that nobody vouches for. */
package org.benchwright.ledger.internal.verify;
