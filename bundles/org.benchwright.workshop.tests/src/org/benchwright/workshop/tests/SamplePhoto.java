package org.benchwright.workshop.tests;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** A photo as small as one can be: a PNG of one grey pixel, with a text in it by which its bytes are found again. */
public final class SamplePhoto {

    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    /** One by one, eight bits of grey. */
    private static final byte[] HEADER = {0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0};
    private static final byte[] UNFILTERED_GREY = {0, 127};

    private SamplePhoto() {
    }

    /** The file's bytes. */
    public static byte[] of(String text) {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(SIGNATURE);
        chunk(file, "IHDR", HEADER);
        chunk(file, "tEXt", ("Comment\0" + text).getBytes(StandardCharsets.ISO_8859_1));
        chunk(file, "IDAT", deflated());
        chunk(file, "IEND", new byte[0]);
        return file.toByteArray();
    }

    private static byte[] deflated() {
        Deflater deflater = new Deflater();
        deflater.setInput(UNFILTERED_GREY);
        deflater.finish();
        byte[] room = new byte[64];
        int length = deflater.deflate(room);
        deflater.end();
        return Arrays.copyOf(room, length);
    }

    private static void chunk(ByteArrayOutputStream file, String name, byte[] content) {
        ByteBuffer named = ByteBuffer.allocate(4 + content.length).put(name.getBytes(StandardCharsets.ISO_8859_1)).put(content);
        CRC32 sum = new CRC32();
        sum.update(named.array());
        file.writeBytes(ByteBuffer.allocate(4).putInt(content.length).array());
        file.writeBytes(named.array());
        file.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
    }
}
