/** What happened in a test: facts that somebody or something told the engine, and what the engine derived from them. */
package org.benchwright.engine.event;
