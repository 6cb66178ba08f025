/** Verified records and figures in; certificate, full record, label, HTML, CSV and JSON out. */
package org.benchwright.report;
