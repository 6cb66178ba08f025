/** What a procedure proves before anybody carries it out: its ways, times, faults revealed, risks of its measurements and what its soaks detect. */
package org.benchwright.language.proof;
