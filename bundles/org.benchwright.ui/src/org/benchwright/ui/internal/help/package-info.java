/** The manual in the window: the page for what is in front of somebody. */
package org.benchwright.ui.internal.help;
