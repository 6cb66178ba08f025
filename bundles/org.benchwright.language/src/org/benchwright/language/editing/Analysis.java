package org.benchwright.language.editing;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

import org.benchwright.language.Remark;

/**
 * All that an editor shows of a text.
 *
 * @param file     the file
 * @param text     the characters that it is about
 * @param remarks  what there is to say about them, by place
 * @param styles   the meaning of every character that is not blank, by place, without overlaps
 * @param contents the rows of its contents
 * @param links    its references to names that are declared somewhere, by place
 * @param folds    what can be folded, by place
 */
public record Analysis(Path file, String text, List<Remark> remarks, List<Style> styles, List<ContentsRow> contents,
        List<Link> links, List<Fold> folds) {
    public Analysis {
        Objects.requireNonNull(file);
        Objects.requireNonNull(text);
        remarks = List.copyOf(remarks);
        styles = List.copyOf(styles);
        contents = List.copyOf(contents);
        links = List.copyOf(links);
        folds = List.copyOf(folds);
    }
}
