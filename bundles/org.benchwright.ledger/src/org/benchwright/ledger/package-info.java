/** The tamper-evident store of tests: events in, canonical bytes chained, signed and verified; it never asks what an event means. */
package org.benchwright.ledger;
