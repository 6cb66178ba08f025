/** Tests of Benchwright engine. */
package org.benchwright.engine.tests;
