/** What all parts of the window share: its texts, work in the background, and bringing views to the front. */
package org.benchwright.ui.internal;
