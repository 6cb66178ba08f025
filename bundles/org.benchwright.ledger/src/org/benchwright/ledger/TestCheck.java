package org.benchwright.ledger;

import java.util.List;

/** The third line of verification, which knows what events mean: re-derives the decisions of one test. */
@FunctionalInterface
public interface TestCheck {

    /**
     * @param test    a test whose links and places were found in order
     * @param entries all its events
     * @return what is wrong with it
     */
    List<Fault> check(TestId test, List<LedgerEntry> entries);}
