package org.benchwright.ledger.internal;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.MerkleTree;

/**
 * Proof paths of RFC 9162 out of what is stored beside the events: the root of the largest perfect subtree that ends at each. Every left
 * child in the tree is stored so; a right child follows from stored ones below it. A path costs some hundred rows at most.
 *
 * @param nodes what is stored
 */
record TreePaths(Nodes nodes) {

    /** What is stored of the tree. */
    interface Nodes {

        /** Hash of the leaf at {@code index}, from 0. */
        Digest leaf(long index) throws SQLException, LedgerException;

        /** Root of the largest perfect subtree that ends before leaf {@code end}. */
        Digest subtree(long end) throws SQLException, LedgerException;
    }

    /** From leaf {@code index} to the root of the tree of {@code size} leaves (RFC 9162, 2.1.3.1). */
    List<Digest> inclusion(long index, long size) throws SQLException, LedgerException {
        List<Digest> path = new ArrayList<>();
        long begin = 0;
        long count = size;
        while (count > 1) {
            long split = split(count);
            if (index - begin < split) {
                path.add(0, range(begin + split, count - split));
                count = split;
            } else {
                path.add(0, range(begin, split));
                begin += split;
                count -= split;
            }
        }
        return List.copyOf(path);
    }

    /** From the tree of {@code old} leaves to that of {@code size} (RFC 9162, 2.1.4.1). */
    List<Digest> consistency(long old, long size) throws SQLException, LedgerException {
        List<Digest> path = new ArrayList<>();
        long begin = 0;
        long count = size;
        long rest = old;
        while (rest < count) {
            long split = split(count);
            if (rest <= split) {
                path.add(0, range(begin + split, count - split));
                count = split;
            } else {
                path.add(0, range(begin, split));
                begin += split;
                count -= split;
                rest -= split;
            }
        }
        if (begin > 0) {
            path.add(0, range(begin, count));
        }
        return List.copyOf(path);
    }

    private Digest range(long begin, long count) throws SQLException, LedgerException {
        long end = begin + count;
        if (Long.bitCount(count) == 1 && Long.lowestOneBit(end) == count) {
            return nodes.subtree(end);
        }
        if (count == 1) {
            return nodes.leaf(begin);
        }
        long split = split(count);
        return MerkleTree.nodeHash(range(begin, split), range(begin + split, count - split));
    }

    /** The largest power of two below {@code count}. */
    private static long split(long count) {
        return Long.highestOneBit(count - 1);
    }
}
