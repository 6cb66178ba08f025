/** The texts of the window. */
package org.benchwright.ui.internal;
