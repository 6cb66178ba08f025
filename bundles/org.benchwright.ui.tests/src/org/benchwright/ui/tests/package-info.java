/** Tests that drive the real workbench by its widgets. */
package org.benchwright.ui.tests;
