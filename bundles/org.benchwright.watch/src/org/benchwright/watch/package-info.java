/** Unattended observation: what can be read from a unit, and what a series of samples tells; it reads, and never writes to a unit. */
package org.benchwright.watch;
