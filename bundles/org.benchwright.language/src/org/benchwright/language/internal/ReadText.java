package org.benchwright.language.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;

/**
 * A file's characters, or why there are none.
 *
 * @param path    where it is
 * @param text    its characters without a byte order mark; what is no UTF-8 is replaced by U+FFFD
 * @param remarks what was odd about reading it
 */
public record ReadText(Path path, String text, List<Remark> remarks) {

    /** Larger than any procedure by far; bounds the work that a file can ask for. */
    private static final int LARGEST = 2_000_000;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    public ReadText {
        remarks = List.copyOf(remarks);
    }

    /** A text that is in memory already. */
    public static ReadText of(SourceText source) {
        Path path = source.path().toAbsolutePath().normalize();
        return source.text().length() > LARGEST ? tooLarge(path) : new ReadText(path, withoutMark(source.text()), List.of());
    }

    /** Reads a file. */
    public static ReadText read(Path path) {
        // What is no file may have no size and no end.
        try (InputStream in = Files.newInputStream(path)) {
            byte[] bytes = in.readNBytes(LARGEST + 1);
            return bytes.length > LARGEST ? tooLarge(path) : decode(path, bytes);
        } catch (IOException | SecurityException unreadable) {
            return unreadable(path, unreadable);
        }
    }

    /** A file or folder that can't be read. */
    public static ReadText unreadable(Path path, Exception why) {
        String words = why instanceof NoSuchFileException ? RemarkCode.CANNOT_READ.text(InternalText.NO_SUCH_FILE.text())
                : RemarkCode.CANNOT_READ.text(String.valueOf(why.getMessage()));
        return new ReadText(path, "", List.of(new Remark(path, 1, 1, 0, 0, RemarkCode.CANNOT_READ, words)));
    }

    /** The folder whose files it sees. */
    public Path folder() {
        return path.getParent() == null ? path : path.getParent();
    }

    private static ReadText tooLarge(Path path) {
        String words = RemarkCode.FILE_TOO_LARGE.text(Integer.toString(LARGEST / 1000));
        return new ReadText(path, "", List.of(new Remark(path, 1, 1, 0, 0, RemarkCode.FILE_TOO_LARGE, words)));
    }

    private static ReadText decode(Path path, byte[] bytes) {
        CharsetDecoder strict = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer readable = CharBuffer.allocate(bytes.length);
        CoderResult end = strict.decode(ByteBuffer.wrap(bytes), readable, true);
        String text = withoutMark(new String(bytes, StandardCharsets.UTF_8));
        if (!end.isError()) {
            return new ReadText(path, text, List.of());
        }
        int odd = Math.min(withoutMark(readable.flip().toString()).length(), text.length());
        TextPlaces places = new TextPlaces(text);
        return new ReadText(path, text, List.of(new Remark(path, places.line(odd), places.column(odd), odd, 1,
                RemarkCode.NOT_UTF_8, RemarkCode.NOT_UTF_8.text())));
    }

    private static String withoutMark(String text) {
        return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    }
}
