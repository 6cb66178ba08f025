/** Tests of Benchwright core. */
package org.benchwright.core.tests;
