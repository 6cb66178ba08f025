/** The instruments of a bench: what they read or give, how accurately, and until when that holds, as a fold over what was signed. */
package org.benchwright.engine.instrument;
