/** How the questions of an editor are answered: an index of one folder's files, and what is read off their trees. */
package org.benchwright.language.internal.editing;
