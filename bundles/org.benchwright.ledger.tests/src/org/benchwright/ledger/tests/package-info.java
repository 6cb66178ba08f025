/** Tests of Benchwright ledger. */
package org.benchwright.ledger.tests;
