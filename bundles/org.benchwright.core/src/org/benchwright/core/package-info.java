/** Value types that every part of Benchwright speaks in (quantities, limits, lamp patterns, names) and the ports for time, progress and cancellation. */
package org.benchwright.core;
