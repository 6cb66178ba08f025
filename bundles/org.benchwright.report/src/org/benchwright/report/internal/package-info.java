/** How a record looks: what documents consist of, and their ways onto paper and screen. */
package org.benchwright.report.internal;
