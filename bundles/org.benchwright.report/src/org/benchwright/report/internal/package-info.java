/** How records and charts look: what documents consist of, their ways onto paper and screen, and how charts are drawn. */
package org.benchwright.report.internal;
