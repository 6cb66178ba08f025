/** What the tests of several bundles share; never part of the product. */
package org.benchwright.testkit;
