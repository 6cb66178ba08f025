package org.benchwright.present.internal;

import java.util.List;

import org.benchwright.report.Page;
import org.benchwright.workshop.KeptTest;

/** The course of a test's soaks, for a browser or a printer. */
public final class SoakPages {

    private SoakPages() {
    }

    /** The page of a test. */
    public static Page of(KeptTest test) {
        List<Page.Section> sections = SoakCourse.of(test.run());
        String basis = CourseWords.BASIS.text(test.id());
        return new Page(CourseWords.TITLE.text(test.run().opening().serial()), sections.isEmpty() ? List.of(basis, CourseWords.NONE.text()) : List.of(basis),
                sections);
    }
}
