/** The least window that the platform can open, against which the start of the real one is measured. */
package org.benchwright.emptywindow.tests;
