package org.benchwright.report.internal;

import java.nio.charset.StandardCharsets;
import java.util.Map;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A QR code (ISO/IEC 18004) as dark and light modules, without its quiet zone.
 *
 * @param modules side length
 * @param dark    rows of modules
 */
record Square(int modules, boolean[][] dark) {

    /** Modules that stay light around it. */
    static final int QUIET = 4;

    /** The code of a text; up to 15 % of it may be lost. */
    static Square of(String text) {
        try {
            ByteMatrix matrix = Encoder.encode(text, ErrorCorrectionLevel.M, signs(text)).getMatrix();
            boolean[][] dark = new boolean[matrix.getHeight()][matrix.getWidth()];
            for (int y = 0; y < matrix.getHeight(); y++) {
                for (int x = 0; x < matrix.getWidth(); x++) {
                    dark[y][x] = matrix.get(x, y) == 1;
                }
            }
            return new Square(matrix.getWidth(), dark);
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("no square for " + text.length() + " characters", tooLong);
        }
    }

    /** Where nothing is said a code holds the western signs only, and the library puts question marks in place of all others. */
    private static Map<EncodeHintType, Object> signs(String text) {
        return StandardCharsets.ISO_8859_1.newEncoder().canEncode(text) ? Map.of() : Map.of(EncodeHintType.CHARACTER_SET, StandardCharsets.UTF_8);
    }
}
