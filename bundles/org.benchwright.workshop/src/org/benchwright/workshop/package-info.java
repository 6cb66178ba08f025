/** The use cases that join language, engine and ledger: receive a unit, carry out a test, verify a record. */
package org.benchwright.workshop;
