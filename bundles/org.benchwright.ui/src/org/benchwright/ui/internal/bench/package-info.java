/** The Bench perspective: units on the bench, the step card, rounds and reminders, and what happened so far. */
package org.benchwright.ui.internal.bench;
