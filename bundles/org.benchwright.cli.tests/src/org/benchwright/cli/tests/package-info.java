/** Tests of the command line. */
package org.benchwright.cli.tests;
