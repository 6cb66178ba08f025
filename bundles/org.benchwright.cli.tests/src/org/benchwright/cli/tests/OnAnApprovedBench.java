package org.benchwright.cli.tests;

import org.junit.jupiter.api.BeforeEach;

/** Tests of commands, each on a bench of its own where the sample procedure is approved: real tests can be opened by it. */
abstract class OnAnApprovedBench extends OnABench {

    @BeforeEach
    void approveTheSample() throws Exception {
        bench.approved();
    }
}
