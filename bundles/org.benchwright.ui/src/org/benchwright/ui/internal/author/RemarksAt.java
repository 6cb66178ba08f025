package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.FolderSession;

/** What is remarked on where the caret is. */
final class RemarksAt {

    private RemarksAt() {
    }

    /** The remarks that the caret touches, else all on its line. Not for the display's thread. */
    static List<Remark> caret(FolderSession session, NamedPlace place) {
        List<Remark> all = session.analyse(place.file(), Cancellation.never()).map(Analysis::remarks).orElse(List.of());
        Map<Boolean, List<Remark>> onLine = all.stream().filter(remark -> remark.line() == line(place))
                .collect(Collectors.partitioningBy(remark -> touches(remark, place.offset())));
        return Optional.of(onLine.get(true)).filter(touched -> !touched.isEmpty()).orElse(onLine.get(false));
    }

    private static boolean touches(Remark remark, int offset) {
        return remark.offset() <= offset && offset <= remark.offset() + remark.length();
    }

    private static long line(NamedPlace place) {
        return place.text().substring(0, Math.min(place.offset(), place.text().length())).chars().filter(c -> c == '\n').count() + 1;
    }
}
