package org.benchwright.language.tests;

import org.benchwright.language.Checked;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;

/**
 * A change that breaks a sound text, and one that only looks like it.
 *
 * @param code     the remark that the broken text earns
 * @param sound    a passage that stands once in the sound family or procedure
 * @param broken   what stands there instead
 * @param nearMiss what may stand there instead; empty: the passage as it is
 * @param place    where the remark is expected: a passage of the broken text, on whose first line it has to be
 */
record BrokenText(RemarkCode code, String sound, String broken, String nearMiss, String place) {

    BrokenText {
        if (Bench.FAMILY.contains(sound) == Bench.PROCEDURE.contains(sound)) {
            throw new IllegalArgumentException("in neither or both: " + sound);
        }
        String text = Bench.FAMILY.contains(sound) ? Bench.FAMILY : Bench.PROCEDURE;
        if (text.indexOf(sound) != text.lastIndexOf(sound)) {
            throw new IllegalArgumentException("more than once: " + sound);
        }
    }

    Checked checkBroken() {
        return Bench.check(family(broken), procedure(broken));
    }

    Checked checkNearMiss() {
        String passage = nearMiss.isEmpty() ? sound : nearMiss;
        return Bench.check(family(passage), procedure(passage));
    }

    int expectedLine() {
        String text = placeInFamily() ? family(broken) : procedure(broken);
        int at = text.indexOf(place);
        if (at < 0) {
            throw new IllegalArgumentException("no such place: " + place);
        }
        return (int) text.substring(0, at).chars().filter(c -> c == '\n').count() + 1;
    }

    boolean isExpectedAt(Remark remark) {
        return remark.line() == expectedLine() && remark.file()
                .equals(placeInFamily() ? Bench.FAMILY_FILE : Bench.PROCEDURE_FILE);
    }

    private boolean placeInFamily() {
        return place.equals(broken) ? inFamily() : family(broken).contains(place);
    }

    private boolean inFamily() {
        return Bench.FAMILY.contains(sound);
    }

    private String family(String passage) {
        return Bench.FAMILY.replace(sound, passage);
    }

    private String procedure(String passage) {
        return Bench.PROCEDURE.replace(sound, passage);
    }

    @Override
    public String toString() {
        return code.word() + ": " + broken.strip().lines().findFirst().orElse("");
    }
}
