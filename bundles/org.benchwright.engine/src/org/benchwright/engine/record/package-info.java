/** A record after its seal as a fold over what people signed about it: decided, amended, reviewed, handed over, superseded, recalled, voided. */
package org.benchwright.engine.record;
