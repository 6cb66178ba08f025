/** What the engineer is told about a text that is well formed: one small class per concern. */
package org.benchwright.language.internal.inspect;
