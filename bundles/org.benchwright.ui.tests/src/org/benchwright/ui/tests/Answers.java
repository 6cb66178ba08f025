package org.benchwright.ui.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A demo answers file, as a technician who has learnt it by heart. */
final class Answers {

    private final Path folder;
    private final List<String[]> left = new ArrayList<>();

    private Answers(Path folder) {
        this.folder = folder;
    }

    static Answers of(String name) throws IOException {
        Path folder = Technician.procedures().resolve("answers");
        Answers answers = new Answers(folder);
        for (String line : Files.readAllLines(folder.resolve(name + ".answers"))) {
            String[] keyAndText = line.split(" = ", 2);
            if (keyAndText.length == 2 && !line.startsWith("#")) {
                answers.left.add(keyAndText);
            }
        }
        return answers;
    }

    /** The next answer to that key. */
    String to(String key) {
        for (String[] answer : left) {
            if (answer[0].equals(key)) {
                left.remove(answer);
                return answer[1];
            }
        }
        return left.stream().filter(answer -> answer[0].endsWith("*") && key.startsWith(answer[0].replace("*", ""))).findFirst()
                .map(answer -> answer[1]).orElseThrow(() -> new AssertionError("no answer to " + key));
    }

    /** A file beside the answers. */
    String file(String name) {
        return folder.resolve(name).toString();
    }
}
