/** Ways to mend what remarks are about, each tried out before it is offered. */
package org.benchwright.language.internal.fix;
