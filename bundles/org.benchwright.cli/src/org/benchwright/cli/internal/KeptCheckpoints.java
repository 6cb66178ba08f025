package org.benchwright.cli.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;

/** The files in which checkpoints of a ledger were kept elsewhere. */
final class KeptCheckpoints {

    /** A checkpoint's file has less than a thousand bytes. */
    private static final int LONGEST = 1 << 16;

    private KeptCheckpoints() {
    }

    /**
     * The texts of several.
     *
     * @throws EntryRefusedException if one is no text, or far too long for a checkpoint
     * @throws CannotStoreException  if one can't be read
     */
    static List<String> read(List<Path> files) throws EntryRefusedException, CannotStoreException {
        List<String> texts = new ArrayList<>();
        for (Path file : files) {
            texts.add(read(file));
        }
        return texts;
    }

    /**
     * The text of one.
     *
     * @throws EntryRefusedException if it is no text, or far too long for a checkpoint
     * @throws CannotStoreException  if it can't be read
     */
    static String read(Path file) throws EntryRefusedException, CannotStoreException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] content = in.readNBytes(LONGEST + 1);
            if (content.length > LONGEST) {
                throw new EntryRefusedException(Message.KEPT_LONG.text(file.toString()));
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(content)).toString();
        } catch (CharacterCodingException e) {
            throw new EntryRefusedException(Message.KEPT_NOT_TEXT.text(file.toString()), e);
        } catch (IOException e) {
            throw new CannotStoreException(Message.KEPT_UNREADABLE.text(file.toString()), e);
        }
    }
}
