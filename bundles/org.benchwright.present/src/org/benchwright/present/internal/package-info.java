/** How Benchwright presentation does its work; seen by its tests only. */
package org.benchwright.present.internal;
