/** What carries the public services of the language. */
package org.benchwright.language.internal;
