/** Reckons from a plan what it proves: the plan's ways, explored as the engine would go them. */
package org.benchwright.language.internal.proof;
