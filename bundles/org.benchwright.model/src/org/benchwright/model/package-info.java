/** Small helpers beside the generated model of families and procedures. */
package org.benchwright.model;
