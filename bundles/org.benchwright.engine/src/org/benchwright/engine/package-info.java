/** The carrying-out of a procedure on one unit, as a fold over events. */
package org.benchwright.engine;
