/** What each screen shows and allows, as plain values and commands for window and terminal alike. */
package org.benchwright.present;
