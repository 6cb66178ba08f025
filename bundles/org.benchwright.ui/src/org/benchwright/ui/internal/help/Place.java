package org.benchwright.ui.internal.help;

import java.net.URI;
import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.present.HelpPage;

/**
 * A place in the manual.
 *
 * @param page    the page, by where it lies in the source, such as {@code docs/watch.md}
 * @param heading the heading that is meant, as links name it; empty for the page from its beginning
 */
record Place(String page, Optional<String> heading) {

    private static final String FOLDER = "docs/";

    /** Where the manual begins. */
    static final Place CONTENTS = of(HelpPage.README);

    static Place of(HelpPage page) {
        return new Place(FOLDER + page.path(), Optional.empty());
    }

    static Place of(RemarkCode code) {
        return new Place(code.page(), Optional.empty());
    }

    /** Where a link on this page leads; it need not come with the program. */
    Place follow(String link) {
        int mark = link.indexOf('#');
        String file = mark < 0 ? link : link.substring(0, mark);
        Optional<String> to = mark < 0 ? Optional.empty() : Optional.of(link.substring(mark + 1));
        return new Place(file.isEmpty() ? page : URI.create(page).resolve(file).normalize().toString(), to);
    }
}
