package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Answers for a rehearsal, in the order of the file.
 *
 * @param file    where they stand
 * @param answers the answers
 */
public record AnswersFile(Path file, List<Line> answers) {

    private static final Pattern KEY = Pattern.compile("[A-Za-z0-9_.*-]+");

    /** Takes a copy. */
    public AnswersFile {
        answers = List.copyOf(answers);
    }

    /**
     * One answer.
     *
     * @param number line number, from 1
     * @param key    what it answers; {@code *} stands for any characters
     * @param text   the answer
     */
    public record Line(int number, String key, String text) {

        boolean wildcard() {
            return key.indexOf('*') >= 0;
        }

        /** True if this line answers that key. */
        boolean fits(String asked) {
            String[] parts = key.split("\\*", -1);
            StringBuilder pattern = new StringBuilder();
            for (int i = 0; i < parts.length; i++) {
                pattern.append(i == 0 ? "" : ".*").append(Pattern.quote(parts[i]));
            }
            return asked.matches(pattern.toString());
        }

        /** How much of the key is spelled out. */
        int literal() {
            return key.replace("*", "").length();
        }
    }

    /** The file is none: a line has no key, or it is no text in UTF-8. */
    public static final class MalformedException extends Exception {
        private static final long serialVersionUID = 1L;

        MalformedException(String words) {
            super(words);
        }
    }

    /**
     * Reads the file.
     *
     * @throws IOException        if it can't be read
     * @throws MalformedException if it holds something else than answers
     */
    public static AnswersFile read(Path file) throws IOException, MalformedException {
        List<Line> answers = new ArrayList<>();
        int number = 0;
        for (String raw : text(file).split("\\R", -1)) {
            number++;
            String line = raw.strip();
            int equals = line.indexOf('=');
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String key = equals < 0 ? "" : line.substring(0, equals).strip();
            if (!KEY.matcher(key).matches()) {
                throw new MalformedException(Message.ANSWERS_MALFORMED.text(file.toString(), String.valueOf(number)));
            }
            answers.add(new Line(number, key, line.substring(equals + 1).strip()));
        }
        return new AnswersFile(file, answers);
    }

    private static String text(Path file) throws IOException, MalformedException {
        try {
            String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString();
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new MalformedException(Message.ANSWERS_NOT_TEXT.text(file.toString()));
        }
    }
}
