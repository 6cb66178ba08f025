package org.benchwright.present;

import org.benchwright.core.SignalWord;

/**
 * A hazard as it is shown: never by colour alone.
 *
 * @param signal its signal word, for those who draw it
 * @param word   the signal word in capitals
 * @param what   what is dangerous
 * @param can    what it can do
 * @param so     how to avoid it
 */
public record HazardPanel(SignalWord signal, String word, String what, String can, String so) {
}
