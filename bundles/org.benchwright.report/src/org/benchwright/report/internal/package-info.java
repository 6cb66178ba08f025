/** How charts are drawn, with the one library that draws them. */
package org.benchwright.report.internal;
