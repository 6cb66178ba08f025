/** Tests of the room workshop. */
package org.benchwright.workshop.tests;
