package org.benchwright.present.internal;

import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.receipt.ReplacedPart;

/** Receipts and repairs in the words of a record. */
public final class RepairWords {

    private RepairWords() {
    }

    /** What was done, such as {@code power stage; C12 (lot L-7)}. */
    public static String of(String what, List<ReplacedPart> parts) {
        return Stream.concat(Stream.of(what).filter(text -> !text.isBlank()), parts.stream().map(RepairWords::part)).collect(Collectors.joining("; "));
    }

    private static String part(ReplacedPart part) {
        return part.lot().isBlank() ? part.part() : HouseWords.PART_LOT.text(part.part(), part.lot());
    }

    /** What the first event of a test tells of how its unit came in and what was mended since its last test; may be empty. */
    static String opening(Fact.Opened opened) {
        StringBuilder words = new StringBuilder();
        opened.receipt().ifPresent(arrival -> words.append(HouseWords.TOLD_RECEIVED.text(day(arrival.instant()), "R-" + arrival.receipt(),
                arrival.order().isBlank() ? "" : HouseWords.RECEIVED_ORDER.text(arrival.order()),
                arrival.owner().isBlank() ? "" : HouseWords.RECEIVED_OWNER.text(arrival.owner()))).append(said(arrival)));
        opened.mended().ifPresent(mended -> mended.repairs().forEach(repair -> words.append(HouseWords.TOLD_REPAIRED.text(repair.by(),
                opened.predecessor().orElse(""), of(repair.what(), repair.parts())))));
        return words.toString();
    }

    private static String said(Arrival arrival) {
        return sentences(arrival.complaint(), arrival.damage(), arrival.preserve()).stream().map(each -> "; " + each).collect(Collectors.joining());
    }

    /** Complaint, damage and what is to be preserved, as far as something is said. */
    static List<String> sentences(String complaint, String damage, String preserve) {
        return Stream.of(sentence(HouseWords.SAID_COMPLAINT, complaint), sentence(HouseWords.SAID_DAMAGE, damage),
                sentence(HouseWords.SAID_PRESERVE, preserve)).filter(text -> !text.isEmpty()).toList();
    }

    private static String sentence(HouseWords words, String text) {
        return text.isBlank() ? "" : words.text(text.replace('\n', ' '));
    }

    /** A day as records show it, in UTC. */
    public static String day(Instant instant) {
        return instant.toString().substring(0, "2026-03-02".length());
    }
}
