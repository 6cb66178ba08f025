/** Tests of Benchwright evidence. */
package org.benchwright.evidence.tests;
