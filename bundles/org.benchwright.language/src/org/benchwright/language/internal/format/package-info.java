/** Lays a text out: lines, indentation and blanks, nothing else. */
package org.benchwright.language.internal.format;
