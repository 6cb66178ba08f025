/** The remarks that the editor and the check command make. */
package org.benchwright.language.validation;
