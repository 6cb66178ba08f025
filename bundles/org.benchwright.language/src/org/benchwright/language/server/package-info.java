/** The language's services for any editor that speaks the Language Server Protocol. */
package org.benchwright.language.server;
