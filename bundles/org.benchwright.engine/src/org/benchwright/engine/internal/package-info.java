/** How the state of a test follows from its events. */
package org.benchwright.engine.internal;
