/** Tests of the room core. */
package org.benchwright.core.tests;
