/** How Benchwright ledger does its work; seen by its tests only. */
package org.benchwright.ledger.internal;
