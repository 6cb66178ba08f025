package org.benchwright.ledger;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Sha256;

/**
 * The Merkle tree of RFC 9162 section 2.1 (as in RFC 6962) over any leaves: roots, inclusion proofs and consistency proofs as pure
 * functions. A leaf is hashed as {@code SHA-256(00 || leaf)}, a node as {@code SHA-256(01 || left || right)}, so that neither can be
 * passed off as the other. Leaves count from 0.
 */
public final class MerkleTree {

    private static final byte[] LEAF = {0};
    private static final byte[] NODE = {1};

    private MerkleTree() {
    }

    /** Hash of a leaf. */
    public static Digest leafHash(byte[] leaf) {
        return Sha256.of(LEAF, leaf);
    }

    /** Hash of the node over {@code left} and {@code right}. */
    public static Digest nodeHash(Digest left, Digest right) {
        return Sha256.of(NODE, left.bytes(), right.bytes());
    }

    /** Hash of the leaf that stands for an event in the ledger's own tree. */
    public static Digest eventLeaf(TestId test, long sequence, Link link) {
        String leaf = "benchwright.leaf/1\n" + test.value() + "\n" + sequence + "\n" + link.hex() + "\n";
        return leafHash(leaf.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Root of the tree over {@code leafHashes}; of an empty tree, the digest of nothing. */
    public static Digest root(List<Digest> leafHashes) {
        if (leafHashes.isEmpty()) {
            return Sha256.of();
        }
        if (leafHashes.size() == 1) {
            return leafHashes.get(0);
        }
        int split = split(leafHashes.size());
        return nodeHash(root(leafHashes.subList(0, split)), root(leafHashes.subList(split, leafHashes.size())));
    }

    /**
     * The hashes that lead from leaf {@code index} to the root (RFC 9162, 2.1.3.1).
     *
     * @throws IndexOutOfBoundsException when there is no such leaf
     */
    public static List<Digest> inclusionProof(int index, List<Digest> leafHashes) {
        List<Digest> proof = new ArrayList<>();
        List<Digest> part = leafHashes;
        int place = Objects.checkIndex(index, leafHashes.size());
        while (part.size() > 1) {
            int split = split(part.size());
            List<Digest> left = part.subList(0, split);
            List<Digest> right = part.subList(split, part.size());
            boolean onTheLeft = place < split;
            proof.add(0, root(onTheLeft ? right : left));
            part = onTheLeft ? left : right;
            place = onTheLeft ? place : place - split;
        }
        return List.copyOf(proof);
    }

    /** Whether {@code proof} leads from the leaf at {@code index} to the root of a tree of {@code size} leaves (RFC 9162, 2.1.3.2). */
    public static boolean includes(Digest leafHash, long index, long size, List<Digest> proof, Digest root) {
        if (index < 0 || index >= size) {
            return false;
        }
        long place = index;
        long last = size - 1;
        Digest hash = leafHash;
        for (Digest step : proof) {
            if (last == 0) {
                return false;
            }
            if ((place & 1) == 1 || place == last) {
                hash = nodeHash(step, hash);
                while ((place & 1) == 0 && place != 0) {
                    place >>= 1;
                    last >>= 1;
                }
            } else {
                hash = nodeHash(hash, step);
            }
            place >>= 1;
            last >>= 1;
        }
        return last == 0 && hash.equals(root);
    }

    /**
     * The hashes that show the first {@code size} leaves to be the beginning of all {@code leafHashes} (RFC 9162, 2.1.4.1).
     *
     * @throws IllegalArgumentException when {@code size} is not from 1 to the number of leaves
     */
    public static List<Digest> consistencyProof(int size, List<Digest> leafHashes) {
        if (size < 1 || size > leafHashes.size()) {
            throw new IllegalArgumentException("no beginning of " + size + " leaves among " + leafHashes.size());
        }
        List<Digest> proof = new ArrayList<>();
        List<Digest> part = leafHashes;
        int beginning = size;
        boolean whole = true;
        while (beginning < part.size()) {
            int split = split(part.size());
            List<Digest> left = part.subList(0, split);
            List<Digest> right = part.subList(split, part.size());
            if (beginning <= split) {
                proof.add(0, root(right));
                part = left;
            } else {
                proof.add(0, root(left));
                part = right;
                beginning -= split;
                whole = false;
            }
        }
        if (!whole) {
            proof.add(0, root(part));
        }
        return List.copyOf(proof);
    }

    /** Whether {@code proof} shows the tree with {@code oldRoot} to be the beginning of that with {@code newRoot} (RFC 9162, 2.1.4.2). */
    public static boolean consistent(long oldSize, long newSize, List<Digest> proof, Digest oldRoot, Digest newRoot) {
        if (oldSize < 1 || oldSize > newSize) {
            return false;
        }
        if (oldSize == newSize) {
            return proof.isEmpty() && oldRoot.equals(newRoot);
        }
        List<Digest> path = new ArrayList<>(proof);
        if (Long.bitCount(oldSize) == 1) {
            path.add(0, oldRoot);
        }
        return !path.isEmpty() && climb(oldSize, newSize, path, oldRoot, newRoot);
    }

    private static boolean climb(long oldSize, long newSize, List<Digest> path, Digest oldRoot, Digest newRoot) {
        int shift = Long.numberOfTrailingZeros(oldSize);
        long place = (oldSize - 1) >> shift;
        long last = (newSize - 1) >> shift;
        Digest before = path.get(0);
        Digest after = path.get(0);
        for (Digest step : path.subList(1, path.size())) {
            if (last == 0) {
                return false;
            }
            if ((place & 1) == 1 || place == last) {
                before = nodeHash(step, before);
                after = nodeHash(step, after);
                while ((place & 1) == 0 && place != 0) {
                    place >>= 1;
                    last >>= 1;
                }
            } else {
                after = nodeHash(after, step);
            }
            place >>= 1;
            last >>= 1;
        }
        return last == 0 && before.equals(oldRoot) && after.equals(newRoot);
    }

    /** The largest power of two below {@code size}. */
    private static int split(int size) {
        return Integer.highestOneBit(size - 1);
    }
}
