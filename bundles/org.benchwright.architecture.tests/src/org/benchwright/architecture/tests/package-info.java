/** Looks at all bundles from outside: who may know whom, and the rules of the house. */
package org.benchwright.architecture.tests;
