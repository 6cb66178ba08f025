/** Tests of Benchwright procedure model. */
package org.benchwright.model.tests;
