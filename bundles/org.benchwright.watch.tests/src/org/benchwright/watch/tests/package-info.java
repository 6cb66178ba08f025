/** Tests of the watch, against peers that others wrote and against faults in between. */
package org.benchwright.watch.tests;
