/** How the window looks everywhere: fonts by pixels, colours for light and dark, drawn lamps, labels, buttons, columns and fields. */
package org.benchwright.ui.internal.look;
