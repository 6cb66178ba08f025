/** The editor of families and procedures: what the language says of a text, shown where it is written. */
package org.benchwright.ui.internal.author;
