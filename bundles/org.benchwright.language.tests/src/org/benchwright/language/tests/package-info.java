/** Tests of the procedure language. */
package org.benchwright.language.tests;
