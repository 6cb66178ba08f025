/** Which names are visible where. */
package org.benchwright.language.scoping;
