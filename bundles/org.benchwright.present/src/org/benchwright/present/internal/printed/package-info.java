/** Procedures as the technician will read them. */
package org.benchwright.present.internal.printed;
