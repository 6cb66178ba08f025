/** What an editor asks of a folder of texts and is told, in plain values: colours, contents, proposals, hovers, places. */
package org.benchwright.language.editing;
