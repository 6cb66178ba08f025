/** Tests of Benchwright command line. */
package org.benchwright.cli.tests;
