/** What all parts of the window share: its texts, and going from one thread to another. */
package org.benchwright.ui.internal;
