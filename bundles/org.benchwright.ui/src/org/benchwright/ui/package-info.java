/** The ids that perspectives and views of the window are known by. */
package org.benchwright.ui;
