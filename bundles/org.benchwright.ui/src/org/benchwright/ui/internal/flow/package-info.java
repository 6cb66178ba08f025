/** The flow of a procedure as a picture: laid out by a library, drawn, gone through by mouse and keys. */
package org.benchwright.ui.internal.flow;
