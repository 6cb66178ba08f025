/** The services that any editor can ask for: proposals, highlighting, the language server. */
package org.benchwright.language.ide;
