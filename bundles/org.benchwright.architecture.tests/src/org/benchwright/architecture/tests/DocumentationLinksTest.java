package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

/** Every link of the documentation leads somewhere: to a file that is there, and to a heading that it has; and every page is linked. */
class DocumentationLinksTest {

    private static final Path ROOT = Path.of("..", "..").toAbsolutePath().normalize();
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern CODE = Pattern.compile("(?ms)^```.*?^```$|`[^`\n]*`");

    private static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
        for (Path folder : List.of(ROOT.resolve("docs"), ROOT.resolve("bundles/org.benchwright.language/docs"))) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(pages::add);
            }
        }
        return pages;
    }

    @Test
    void everyLinkLeadsSomewhere() throws IOException {
        List<String> broken = new ArrayList<>();
        int links = 0;
        for (Path page : pages()) {
            for (Matcher link = LINK.matcher(CODE.matcher(Files.readString(page)).replaceAll("")); link.find();) {
                links++;
                if (!leads(page, link.group(1))) {
                    broken.add(ROOT.relativize(page) + ": " + link.group(1));
                }
            }
        }
        assertEquals(List.of(), broken);
        assertTrue(links > 100, links + " links were found");
    }

    @Test
    void everyPageOfTheManualIsInItsContents() throws IOException {
        String contents = Files.readString(ROOT.resolve("docs/README.md"));
        List<Path> unlinked = new ArrayList<>();
        for (Path page : pages()) {
            Path docs = ROOT.resolve("docs");
            boolean ofTheManual = page.startsWith(docs) && !page.endsWith("README.md") && !page.startsWith(docs.resolve("decisions"));
            if (ofTheManual && !contents.contains("(" + docs.relativize(page).toString().replace('\\', '/') + ")")) {
                unlinked.add(page);
            }
        }
        assertEquals(List.of(), unlinked);
    }

    private static boolean leads(Path page, String target) throws IOException {
        if (target.startsWith("http")) {
            return true;
        }
        String[] parts = target.split("#", 2);
        Path file = parts[0].isEmpty() ? page : inCheckout(page).getParent().resolve(parts[0]).normalize();
        return Files.exists(file) && (parts.length == 1 || anchors(file).contains(parts[1]));
    }

    /** The pages of the remarks are read where {@code docs} shows them. */
    private static Path inCheckout(Path page) {
        Path remarks = ROOT.resolve("bundles/org.benchwright.language/docs/remarks");
        return page.startsWith(remarks) ? ROOT.resolve("docs/remarks").resolve(remarks.relativize(page)) : page;
    }

    private static Set<String> anchors(Path file) throws IOException {
        return CODE.matcher(Files.readString(file)).replaceAll(code -> Matcher.quoteReplacement(code.group().startsWith("```") ? "" : code.group()))
                .lines().filter(line -> line.startsWith("#"))
                .map(line -> line.replaceFirst("^#+ ", "").toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'))
                .collect(Collectors.toSet());
    }
}
