/** Tests of Benchwright presentation. */
package org.benchwright.present.tests;
