/** Tests of Benchwright workshop. */
package org.benchwright.workshop.tests;
