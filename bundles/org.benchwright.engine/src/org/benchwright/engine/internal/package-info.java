/** How Benchwright engine does its work; seen by its tests only. */
package org.benchwright.engine.internal;
