package org.benchwright.ui.internal.author;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Message;

/** Says what a list of remarks is worth: of when it is, and whether it is complete. */
final class RemarkWords {

    private RemarkWords() {
    }

    static String of(FolderState state) {
        String folder = String.valueOf(state.folder().getFileName());
        if (state.trouble().isPresent()) {
            return Message.REMARKS_FAILED.text(folder, state.trouble().get());
        } else if (state.checkedAt().isEmpty()) {
            return state.running() ? Message.REMARKS_FIRST_CHECK.text(folder) : Message.REMARKS_NOT_YET.text(folder);
        }
        return checked(state, folder, state.checkedAt().get()) + (state.running() ? " " + Message.REMARKS_AGAIN.text() : "");
    }

    private static String checked(FolderState state, String folder, Instant at) {
        List<Remark> all = state.remarks().values().stream().flatMap(List::stream).toList();
        String files = Integer.toString(state.remarks().size());
        if (all.isEmpty()) {
            return Message.REMARKS_NONE.text(folder, files, WallTime.here().justNow(at));
        }
        List<String> counts = new ArrayList<>();
        count(all, Severity.ERROR, Message.REMARKS_ERRORS, counts);
        count(all, Severity.WARNING, Message.REMARKS_WARNINGS, counts);
        count(all, Severity.INFO, Message.REMARKS_HINTS, counts);
        return Message.REMARKS_SOME.text(folder, files, WallTime.here().justNow(at), String.join(", ", counts));
    }

    private static void count(List<Remark> all, Severity severity, Message words, List<String> counts) {
        long count = all.stream().filter(remark -> remark.severity() == severity).count();
        if (count > 0) {
            counts.add(words.text(Long.toString(count)));
        }
    }
}
