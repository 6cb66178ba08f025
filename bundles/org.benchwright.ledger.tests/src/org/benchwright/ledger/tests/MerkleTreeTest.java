package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.MerkleTree;
import org.junit.jupiter.api.Test;

/**
 * The tree of RFC 9162 section 2.1 against the vectors that the Certificate Transparency implementations share
 * (transparency-dev/merkle: testonly/constants.go, rfc6962/rfc6962_test.go, testdata; google/certificate-transparency:
 * cpp/merkletree/merkle_tree_test.cc).
 */
class MerkleTreeTest {

    private static final List<Digest> LEAVES = Stream.of("", "00", "10", "2021", "3031", "40414243", "5051525354555657",
            "606162636465666768696a6b6c6d6e6f").map(leaf -> MerkleTree.leafHash(HexFormat.of().parseHex(leaf))).toList();

    private static final List<Digest> ROOTS = digests("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
            "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
            "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
            "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
            "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
            "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
            "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
            "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");

    private static final List<Digest> FIRST_OF_EIGHT = digests("96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
            "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
            "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4");

    private static List<Digest> digests(String... hex) {
        return Stream.of(hex).map(Digest::parse).toList();
    }

    @Test
    void rootsOfZeroToEightLeaves() {
        CompactRange range = CompactRange.empty();
        for (int size = 0; size <= 8; size++) {
            assertEquals(ROOTS.get(size), MerkleTree.root(LEAVES.subList(0, size)));
            assertEquals(ROOTS.get(size), range.root());
            range = size < 8 ? range.append(LEAVES.get(size)) : range;
        }
    }

    @Test
    void publishedInclusionProofs() {
        assertEquals(FIRST_OF_EIGHT, MerkleTree.inclusionProof(0, LEAVES));
        assertEquals(digests("fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125"),
                MerkleTree.inclusionProof(2, LEAVES.subList(0, 3)));
    }

    @Test
    void publishedConsistencyProofs() {
        assertEquals(FIRST_OF_EIGHT, MerkleTree.consistencyProof(1, LEAVES));
        assertEquals(digests("0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"), MerkleTree.consistencyProof(6, LEAVES));
        for (int size = 1; size <= 8; size++) {
            assertEquals(List.of(), MerkleTree.consistencyProof(size, LEAVES.subList(0, size)));
        }
    }

    @Test
    void aLeafCannotPassForANode() {
        byte[] both = new byte[64];
        System.arraycopy(LEAVES.get(0).bytes(), 0, both, 0, 32);
        System.arraycopy(LEAVES.get(1).bytes(), 0, both, 32, 32);
        assertFalse(MerkleTree.leafHash(both).equals(MerkleTree.nodeHash(LEAVES.get(0), LEAVES.get(1))));
        assertFalse(MerkleTree.nodeHash(LEAVES.get(1), LEAVES.get(0)).equals(MerkleTree.nodeHash(LEAVES.get(0), LEAVES.get(1))));
    }

    @Test
    void everyProofOfEverySizeHoldsAndNoAlteredOneDoes() {
        List<Digest> leaves = leaves(33);
        for (int size = 1; size <= leaves.size(); size++) {
            List<Digest> part = leaves.subList(0, size);
            Digest root = MerkleTree.root(part);
            for (int index = 0; index < size; index++) {
                List<Digest> proof = MerkleTree.inclusionProof(index, part);
                assertTrue(MerkleTree.includes(part.get(index), index, size, proof, root));
                int place = index;
                int count = size;
                alterations(proof).forEach(altered -> assertFalse(
                        MerkleTree.includes(part.get(place), place, count, altered, root), place + " of " + count));
                assertFalse(MerkleTree.includes(part.get((index + 1) % size), index, size, proof, root) && size > 1);
                assertFalse(MerkleTree.includes(part.get(index), index + 1, size, proof, root));
                assertFalse(MerkleTree.includes(part.get(index), -1, size, proof, root));
                assertFalse(MerkleTree.includes(part.get(index), size, size, proof, root));
            }
        }
    }

    @Test
    void everyBeginningIsConsistentAndNoAlteredProofIs() {
        List<Digest> leaves = leaves(33);
        for (int size = 1; size <= leaves.size(); size++) {
            List<Digest> all = leaves.subList(0, size);
            Digest root = MerkleTree.root(all);
            for (int old = 1; old <= size; old++) {
                List<Digest> proof = MerkleTree.consistencyProof(old, all);
                Digest oldRoot = MerkleTree.root(all.subList(0, old));
                assertTrue(MerkleTree.consistent(old, size, proof, oldRoot, root), old + " of " + size);
                int beginning = old;
                int count = size;
                alterations(proof).forEach(altered -> assertFalse(
                        MerkleTree.consistent(beginning, count, altered, oldRoot, root), beginning + " of " + count));
                assertFalse(MerkleTree.consistent(old, size, proof, leaves.get(0), root) && old > 1);
                assertFalse(MerkleTree.consistent(old, size, proof, oldRoot, MerkleTree.nodeHash(root, root)));
                assertFalse(MerkleTree.consistent(size + 1, size, proof, oldRoot, root));
                assertFalse(MerkleTree.consistent(0, size, proof, oldRoot, root));
            }
        }
    }

    @Test
    void theCompactRangeAgreesWithTheDefinitionAndCanBePickedUpAtAnySize() {
        List<Digest> leaves = leaves(300);
        List<Digest> ends = new ArrayList<>();
        CompactRange range = CompactRange.empty();
        for (int size = 1; size <= leaves.size(); size++) {
            range = range.append(leaves.get(size - 1));
            ends.add(range.lastSubtree());
            assertEquals(MerkleTree.root(leaves.subList(0, size)), range.root());
            CompactRange pickedUp = new CompactRange(size,
                    CompactRange.ends(size).stream().map(end -> ends.get((int) (end - 1))).toList());
            assertEquals(range, pickedUp);
        }
    }

    @Test
    void anAppendNeedsNoSubtreesButThoseBelowWhatChanges() {
        List<Digest> leaves = leaves(130);
        List<Digest> ends = new ArrayList<>();
        CompactRange whole = CompactRange.empty();
        for (Digest leaf : leaves) {
            whole = whole.append(leaf);
            ends.add(whole.lastSubtree());
        }
        for (int size = 0; size < leaves.size(); size++) {
            for (int more = 0; more <= leaves.size() - size; more++) {
                int before = (int) (size - CompactRange.changing(size, more));
                CompactRange last = new CompactRange(size - before, CompactRange.ends(size).stream().filter(end -> end > before)
                        .map(end -> ends.get((int) (end - 1))).toList());
                for (int at = size; at < size + more; at++) {
                    last = last.append(leaves.get(at));
                    assertEquals(ends.get(at), last.lastSubtree(), "leaf " + at + " of " + more + " appended to " + size);
                    assertEquals(at + 1, before + last.size());
                }
            }
        }
        assertEquals(0, CompactRange.changing(6, 1), "nothing is merged with the seventh leaf");
        assertEquals(7, CompactRange.changing(7, 1), "the eighth leaf makes one tree of all");
    }

    @Test
    void refusesSizesThatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> new CompactRange(3, List.of(LEAVES.get(0))));
        assertThrows(IndexOutOfBoundsException.class, () -> MerkleTree.inclusionProof(8, LEAVES));
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.consistencyProof(9, LEAVES));
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.consistencyProof(0, LEAVES));
        assertThrows(IllegalStateException.class, () -> CompactRange.empty().lastSubtree());
    }

    private static List<Digest> leaves(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> MerkleTree.leafHash(("leaf " + i).getBytes(StandardCharsets.UTF_8))).toList();
    }

    /** The proof with one hash changed, taken away, doubled or added, and in reverse. */
    private static Stream<List<Digest>> alterations(List<Digest> proof) {
        List<List<Digest>> altered = new ArrayList<>();
        for (int i = 0; i < proof.size(); i++) {
            List<Digest> changed = new ArrayList<>(proof);
            changed.set(i, MerkleTree.nodeHash(proof.get(i), proof.get(i)));
            altered.add(changed);
            List<Digest> shorter = new ArrayList<>(proof);
            shorter.remove(i);
            altered.add(shorter);
            List<Digest> doubled = new ArrayList<>(proof);
            doubled.add(i, proof.get(i));
            altered.add(doubled);
        }
        List<Digest> longer = new ArrayList<>(proof);
        longer.add(LEAVES.get(0));
        altered.add(longer);
        if (proof.size() > 1) {
            List<Digest> reversed = new ArrayList<>(proof);
            Collections.reverse(reversed);
            altered.add(reversed);
        }
        return altered.stream();
    }
}
