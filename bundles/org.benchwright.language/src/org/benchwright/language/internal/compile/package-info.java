/** From the model of a procedure without errors to the plan that is carried out. */
package org.benchwright.language.internal.compile;
