/** People who sign: the register of who they are and what they may do, their keys, and the files that keep their secret halves. */
package org.benchwright.ledger.people;
