/** Tests that are open in this window, each with a thread of its own that writes; free of widgets. */
package org.benchwright.ui.internal.desk;
