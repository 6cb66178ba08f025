/** Tests of the procedure model. */
package org.benchwright.model.tests;
