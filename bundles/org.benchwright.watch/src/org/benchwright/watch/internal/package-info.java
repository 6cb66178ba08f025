/** How samples are taken by Modbus, OPC UA or from a simulated unit, behind the read-only port. */
package org.benchwright.watch.internal;
