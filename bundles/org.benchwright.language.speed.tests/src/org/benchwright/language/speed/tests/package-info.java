/** How long the language takes: benchmarks, and the table that is printed of them. */
package org.benchwright.language.speed.tests;
