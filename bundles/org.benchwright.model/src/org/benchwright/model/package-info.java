/** What is read off the generated model of families and procedures. */
package org.benchwright.model;
