/** Value types that every part of Benchwright shares (quantities, limits, lamp patterns, verdicts) and the ports to time, progress and cancellation. */
package org.benchwright.core;
