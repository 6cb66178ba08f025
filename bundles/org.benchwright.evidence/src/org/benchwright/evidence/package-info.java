/** The mathematics of a test: what a soak proves, decision rules and their risks, as pure functions. */
package org.benchwright.evidence;
