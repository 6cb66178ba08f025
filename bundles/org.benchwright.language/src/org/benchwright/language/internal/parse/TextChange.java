package org.benchwright.language.internal.parse;

/**
 * The one passage in which two texts differ.
 *
 * @param offset  where it begins in both
 * @param end     where it ends in the text before
 * @param longer  by how many characters the text after it is longer than the one before
 */
record TextChange(int offset, int end, int longer) {

    static TextChange between(String before, String after) {
        int shorter = Math.min(before.length(), after.length());
        int same = 0;
        while (same < shorter && before.charAt(same) == after.charAt(same)) {
            same++;
        }
        int sameEnd = 0;
        while (sameEnd < shorter - same && before.charAt(before.length() - 1 - sameEnd) == after.charAt(after.length() - 1 - sameEnd)) {
            sameEnd++;
        }
        return new TextChange(same, before.length() - sameEnd, after.length() - before.length());
    }
}
