/** Between the characters of a text and the model: values, and plain words for what does not fit. */
package org.benchwright.language.internal.text;
