/** Tests of Benchwright procedure language. */
package org.benchwright.language.tests;
