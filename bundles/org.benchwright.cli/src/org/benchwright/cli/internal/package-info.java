/** The commands, one class for what is done in one place; and what they are made of: options, screens, printing. */
package org.benchwright.cli.internal;
