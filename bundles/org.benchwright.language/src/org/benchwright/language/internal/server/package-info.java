/** The language server: what the protocol asks, answered by the same services that the window's editor uses. */
package org.benchwright.language.internal.server;
