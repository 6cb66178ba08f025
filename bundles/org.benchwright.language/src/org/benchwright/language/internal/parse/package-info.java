/** Reads texts step by step: a mistake in one step costs that step only, and a change in one step leaves the others as they are. */
package org.benchwright.language.internal.parse;
