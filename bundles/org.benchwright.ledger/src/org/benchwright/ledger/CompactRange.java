package org.benchwright.ledger;

import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Digest;

/**
 * All that must be remembered of a Merkle tree in order to go on: the roots of its perfect subtrees, largest first, one for each bit of
 * its size. Appending costs at most as many hashes as the size has bits.
 *
 * @param size     number of leaves
 * @param subtrees roots of the perfect subtrees from left to right
 */
public record CompactRange(long size, List<Digest> subtrees) {

    /**
     * @throws IllegalArgumentException when the number of subtrees does not fit the size
     */
    public CompactRange {
        subtrees = List.copyOf(subtrees);
        if (size < 0 || Long.bitCount(size) != subtrees.size()) {
            throw new IllegalArgumentException(subtrees.size() + " subtrees can't make " + size + " leaves");
        }
    }

    /** The tree without leaves. */
    public static CompactRange empty() {
        return new CompactRange(0, List.of());
    }

    /** This tree and one leaf more. */
    public CompactRange append(Digest leafHash) {
        int merges = Long.numberOfTrailingZeros(size + 1);
        List<Digest> roots = new ArrayList<>(subtrees);
        Digest merged = leafHash;
        for (int i = 0; i < merges; i++) {
            merged = MerkleTree.nodeHash(roots.remove(roots.size() - 1), merged);
        }
        roots.add(merged);
        return new CompactRange(size + 1, roots);
    }

    /**
     * The root of the largest perfect subtree that ends at the last leaf. Kept beside each event, it is what makes {@link #subtrees} of
     * any size a matter of a few rows.
     *
     * @throws IllegalStateException when there is no leaf
     */
    public Digest lastSubtree() {
        if (subtrees.isEmpty()) {
            throw new IllegalStateException("a tree without leaves");
        }
        return subtrees.get(subtrees.size() - 1);
    }

    /** Sizes of the trees whose {@link #lastSubtree} are, in this order, the subtrees of a tree of {@code size} leaves. */
    public static List<Long> ends(long size) {
        List<Long> ends = new ArrayList<>();
        long end = 0;
        for (long bit = Long.highestOneBit(size); bit != 0; bit >>= 1) {
            if ((size & bit) != 0) {
                end += bit;
                ends.add(end);
            }
        }
        return List.copyOf(ends);
    }

    /**
     * How many of the last leaves of a tree of {@code size} leaves lie below what changes when {@code more} are appended. The subtrees before them stay
     * as they are, and those over them are a compact range of their own: an append need know no others.
     */
    public static long changing(long size, long more) {
        long changed = size ^ size + more;
        return changed == 0 ? 0 : size & 2 * Long.highestOneBit(changed) - 1;
    }

    /** The root over all leaves. */
    public Digest root() {
        if (subtrees.isEmpty()) {
            return MerkleTree.root(List.of());
        }
        Digest root = lastSubtree();
        for (int i = subtrees.size() - 2; i >= 0; i--) {
            root = MerkleTree.nodeHash(subtrees.get(i), root);
        }
        return root;
    }
}
