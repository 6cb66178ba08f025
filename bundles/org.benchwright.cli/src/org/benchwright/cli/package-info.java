/** The command line: arguments, exit statuses, printing and the terminal face of a test. */
package org.benchwright.cli;
