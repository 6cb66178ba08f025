package org.benchwright.present.internal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;

/**
 * A picture in a form that telephones write and the platform has no reader for: HEIF (ISO/IEC 23008-12; boxes of ISO/IEC 14496-12) or WebP
 * (RFC 9649). What is inside isn't decoded; that all of it is there is seen by its boxes, each of which tells its length.
 */
final class PictureBoxes {

    private static final Set<String> BRANDS = Set.of("heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif");
    private static final int HEAD = 8;

    private final ByteBuffer bytes;

    PictureBoxes(byte[] content) {
        bytes = ByteBuffer.wrap(content);
    }

    /** Whether it is such a picture, from its first byte to its last. */
    boolean whole() {
        return bytes.capacity() > 2 * HEAD && (isWholeWebp() || isWholeHeif());
    }

    private String word(int at) {
        return new String(bytes.array(), at, 4, StandardCharsets.ISO_8859_1);
    }

    private boolean isWholeWebp() {
        long length = Integer.toUnsignedLong(bytes.duplicate().order(ByteOrder.LITTLE_ENDIAN).getInt(4));
        return word(0).equals("RIFF") && word(HEAD).equals("WEBP") && HEAD + length <= bytes.capacity();
    }

    private boolean isWholeHeif() {
        if (!word(4).equals("ftyp") || !BRANDS.contains(word(HEAD))) {
            return false;
        }
        Set<String> boxes = new HashSet<>();
        long at = 0;
        while (at + HEAD <= bytes.capacity()) {
            boxes.add(word((int) at + 4));
            long length = lengthOf((int) at);
            if (length < HEAD || length > bytes.capacity() - at) {
                return false;
            }
            at += length;
        }
        return boxes.contains("meta") && boxes.contains("mdat");
    }

    /** The length in a box's head; 0 means up to the end, 1 that it follows in eight bytes. */
    private long lengthOf(int at) {
        long length = Integer.toUnsignedLong(bytes.getInt(at));
        if (length == 1 && at + 2 * HEAD <= bytes.capacity()) {
            return bytes.getLong(at + HEAD);
        }
        return length == 0 ? bytes.capacity() - at : length;
    }
}
