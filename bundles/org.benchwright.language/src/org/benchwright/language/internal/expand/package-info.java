/** Procedures with the shared stages that they carry out put in their places. */
package org.benchwright.language.internal.expand;
