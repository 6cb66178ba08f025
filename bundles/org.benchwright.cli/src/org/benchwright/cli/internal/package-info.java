/** How Benchwright command line does its work; seen by its tests only. */
package org.benchwright.cli.internal;
