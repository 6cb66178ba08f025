/** Tests of the room evidence. */
package org.benchwright.evidence.tests;
