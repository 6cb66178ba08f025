package org.benchwright.language.tests;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

import org.benchwright.core.Digest;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.RemarkPages;
import org.benchwright.language.SourceText;

/** The page of a code with its two examples, each as the files that it stands for. */
record RemarkPage(RemarkCode code, String text) {

    static final Path FOLDER = Path.of("pages").toAbsolutePath();
    /** What the pages say was approved: another text of one revision. */
    static final ApprovedRevisions APPROVED = (name, family, number) -> name.equals("approved") && number == 1
            ? Optional.of(new ApprovedRevisions.Approved(Digest.of(new byte[0]), 2)) : Optional.empty();
    private static final Path FRAMES = Path.of("../org.benchwright.language/docs/remarks/README.md");
    private static final Pattern BLOCK = Pattern.compile("```(file|family|head|steps?|blocks)\n(.*?)\n```", Pattern.DOTALL);
    private static final Pattern FRAME = Pattern.compile("```frame (\\S+)\n(.*?)\n```", Pattern.DOTALL);

    static RemarkPage of(RemarkCode code) {
        return new RemarkPage(code, RemarkPages.text(code));
    }

    boolean hasExamples() {
        return !blocks().isEmpty();
    }

    private List<MatchResult> blocks() {
        return BLOCK.matcher(text).results().toList();
    }

    /** The files with the example that earns the remark. */
    List<SourceText> bad() {
        return files(blocks().get(0));
    }

    /** The files with the example mended. */
    List<SourceText> good() {
        return files(blocks().get(1));
    }

    private static List<SourceText> files(MatchResult block) {
        String kind = block.group(1);
        List<SourceText> files = new ArrayList<>();
        files.add(frame("lark.family", "", Optional.empty()));
        if (kind.equals("file")) {
            files.add(new SourceText(FOLDER.resolve("own.procedure"), block.group(2)));
        } else if (kind.equals("family")) {
            files.add(frame("other.family", kind, Optional.of(block.group(2))));
        } else {
            files.add(frame("example.procedure", kind, Optional.of(block.group(2))));
        }
        return files;
    }

    /** The frames as they stand beside the pages, with nothing in them. */
    static List<SourceText> emptyFrames() {
        return List.of(frame("lark.family", "", Optional.empty()), frame("other.family", "", Optional.empty()),
                frame("example.procedure", "", Optional.empty()));
    }

    private static SourceText frame(String name, String place, Optional<String> example) {
        try {
            String frame = FRAME.matcher(Files.readString(FRAMES)).results().filter(match -> match.group(1).equals(name))
                    .findFirst()
                    .orElseThrow().group(2);
            String filled = example.map(lines -> frame.replace("<" + place + ">", lines)).orElse(frame);
            return new SourceText(FOLDER.resolve(name), filled.replaceAll("(?m)^<\\w+>\n", ""));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
