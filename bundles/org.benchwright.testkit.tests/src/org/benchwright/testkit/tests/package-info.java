/** Tests of the test kit: a property that does not hold must be reported. */
package org.benchwright.testkit.tests;
