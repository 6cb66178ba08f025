/** Revisions of procedures as a fold over what was prepared, approved and withdrawn: who may do what, and what holds now. */
package org.benchwright.engine.revision;
