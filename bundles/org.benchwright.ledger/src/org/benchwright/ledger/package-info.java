/** The tamper-evident store of records: canonical form, chain, seals and verification. */
package org.benchwright.ledger;
