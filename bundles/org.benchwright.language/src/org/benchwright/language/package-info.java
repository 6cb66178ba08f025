/** The procedure language: from text to an immutable plan, with remarks on what is wrong in between. */
package org.benchwright.language;
