/** Tests of the presentation. */
package org.benchwright.present.tests;
