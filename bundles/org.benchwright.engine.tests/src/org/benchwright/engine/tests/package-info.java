/** Tests of the room engine. */
package org.benchwright.engine.tests;
