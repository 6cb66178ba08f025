/** When somebody is in the shop, and what that means for the looks of a soak. */
package org.benchwright.engine.calendar;
