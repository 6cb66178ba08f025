/** Checks the ledger against published vectors, against concurrent writers, lost power and people who change it. */
package org.benchwright.ledger.tests;
