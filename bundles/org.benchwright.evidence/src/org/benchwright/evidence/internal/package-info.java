/** Integrals, likelihoods and sequential sums that the published formulas are reckoned with. */
package org.benchwright.evidence.internal;
