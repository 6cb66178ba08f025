/** Carrying out a plan on one unit: a test is the fold of its events, and its verdict is derived, never set. */
package org.benchwright.engine;
