/** The application, its one window, and the page that the first start shows. */
package org.benchwright.ui.internal.app;
