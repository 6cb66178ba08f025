/** How Benchwright workshop does its work; seen by its tests only. */
package org.benchwright.workshop.internal;
