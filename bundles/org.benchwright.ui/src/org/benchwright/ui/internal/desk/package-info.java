/** Tests that are open in this window, each with a thread of its own that writes; and whether somebody is at the window just now. */
package org.benchwright.ui.internal.desk;
