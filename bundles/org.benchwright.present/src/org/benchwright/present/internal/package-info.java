/** What stands behind the screens: entries read, events put into words, figures reckoned from records, record sheets and reports put together. */
package org.benchwright.present.internal;
