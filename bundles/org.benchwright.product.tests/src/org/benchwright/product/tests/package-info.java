/** Tests that start the materialised product as its users do, as a process. */
package org.benchwright.product.tests;
