/** The message texts of the value types and the parsing behind them; nothing here is for other bundles. */
package org.benchwright.core.internal;
