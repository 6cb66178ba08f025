/** How Benchwright evidence does its work; seen by its tests only. */
package org.benchwright.evidence.internal;
