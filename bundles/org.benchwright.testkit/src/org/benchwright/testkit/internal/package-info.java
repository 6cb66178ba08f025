/** How properties are run inside the test runtime. */
package org.benchwright.testkit.internal;
