/** What the printed and exported record says, and that its files are what they claim to be. */
package org.benchwright.report.tests;
