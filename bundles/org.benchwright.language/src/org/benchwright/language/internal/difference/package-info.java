/** What two plans differ in, said by meaning. */
package org.benchwright.language.internal.difference;
