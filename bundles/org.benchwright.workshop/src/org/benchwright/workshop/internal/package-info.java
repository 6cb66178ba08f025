/** How events become bytes and bytes events, what was known on the bench at each of them, and what verification derives again. */
package org.benchwright.workshop.internal;
