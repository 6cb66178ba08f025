/** How the ledger does it: canonical bytes, signed statements, and the SQLite file. */
package org.benchwright.ledger.internal;
