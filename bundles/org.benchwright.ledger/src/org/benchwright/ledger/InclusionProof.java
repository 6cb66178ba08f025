package org.benchwright.ledger;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.JsonValue;
import org.benchwright.ledger.internal.ProofCodec;

/**
 * Shows to somebody without the ledger that an event, and with it all events before it in its test, is among those that a checkpoint
 * tells of.
 *
 * @param test       the event's test
 * @param sequence   its number in the test, from 1
 * @param position   its place in the ledger, from 1
 * @param previous   link of the event before it in the test
 * @param event      the event's canonical text
 * @param earlier    canonical texts of all events of the test before it, or none where they are left out
 * @param path       the hashes that lead from the event to the checkpoint's root
 * @param checkpoint the checkpoint
 */
public record InclusionProof(TestId test, long sequence, long position, Link previous, String event, List<String> earlier,
        List<Digest> path, SignedCheckpoint checkpoint) {

    public InclusionProof {
        Objects.requireNonNull(test);
        Objects.requireNonNull(previous);
        Objects.requireNonNull(event);
        Objects.requireNonNull(checkpoint);
        earlier = List.copyOf(earlier);
        path = List.copyOf(path);
    }

    /** The event's link. */
    public Link link() {
        return previous.next(event.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Whether the checkpoint holds, the path leads to its root, the earlier events, where told, lead to this one, and each event says of itself
     * that it is the one that it is told to be.
     */
    public boolean holds() {
        Digest leaf = MerkleTree.eventLeaf(test, sequence, link());
        return checkpoint.holds() && chained() && says(event, sequence)
                && MerkleTree.includes(leaf, position - 1, checkpoint.checkpoint().size(), path, checkpoint.checkpoint().root());
    }

    private boolean chained() {
        if (earlier.isEmpty()) {
            return sequence > 1 || previous.equals(Link.before(test));
        }
        Link link = Link.before(test);
        long number = 0;
        for (String text : earlier) {
            number++;
            if (!says(text, number)) {
                return false;
            }
            link = link.next(text.getBytes(StandardCharsets.UTF_8));
        }
        return number == sequence - 1 && link.equals(previous);
    }

    /** The hash ties an event to its place; whoever reads it goes by what it says. */
    private boolean says(String text, long number) {
        try {
            JsonValue.Members said = CanonicalJson.parse(text);
            return said.text("test").equals(Optional.of(test.value())) && said.text("sequence").equals(Optional.of(Long.toString(number)));
        } catch (PayloadException noEvent) {
            return false;
        }
    }

    /** The file's text. */
    public String text() {
        return ProofCodec.text(this);
    }

    /**
     * Reads a file's text. Whether what it says is true is for {@link #holds}.
     *
     * @throws ProofFormatException when it is no inclusion proof
     */
    public static InclusionProof read(String text) throws ProofFormatException {
        return ProofCodec.inclusion(text);
    }
}
