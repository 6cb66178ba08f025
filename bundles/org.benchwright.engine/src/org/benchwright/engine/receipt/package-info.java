/** Units that came in: in which condition, what is to be preserved, and what was replaced in them, as a fold over what was signed. */
package org.benchwright.engine.receipt;
