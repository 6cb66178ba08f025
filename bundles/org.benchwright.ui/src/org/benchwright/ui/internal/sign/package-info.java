/** Signing with a person's key in the window: what is asked, who signs, and the password. */
package org.benchwright.ui.internal.sign;
