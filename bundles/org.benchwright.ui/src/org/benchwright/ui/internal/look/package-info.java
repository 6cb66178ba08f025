/** Fonts by pixels, colours for light and dark, and drawn lamps. */
package org.benchwright.ui.internal.look;
