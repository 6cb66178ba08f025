package org.benchwright.language.tests;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.services.ProcedureGrammarAccess;
import org.eclipse.emf.ecore.EDataType;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParser;

import com.google.inject.Injector;

/**
 * The reference of the language, written from its grammar: each construct with its syntax, what there is to say of it, an
 * example from the demo's files or else from
 * the sound texts of these tests, all of which are checked, and the remarks that are made at it.
 */
final class LanguageReference {

    /** Where it lies. */
    static final Path PAGE = Path.of("../../docs/language-reference.md");
    /** What there is to say of a construct beside its syntax, under its title. */
    private static final Path NOTES = Path.of("reference/notes.md");
    private static final Path DEMO = Path.of("../../procedures");
    private static final Set<String> EVERYDAY = Set.of("STRING", "INT", "Count", "Index", "Number", "UnsignedNumber",
            "UnitWord", "Name", "BareName",
            "ParameterName");
    private static final int LONGEST_LINE = 100;
    private static final int MOST_LINES = 12;
    private static final String HEAD = """
            # Language reference

            Every construct of the procedure language, in the order of its grammar; this page is written from the grammar. Where to begin is in
            [the introduction](language.md); each remark has [a page](remarks/README.md).

            How to read the syntax: words stand as they are typed. `[ ]` is around what may be missing, `|` between choices, `( )` around a choice, `...` behind what
            may come again. `<...>` is a name, a number, or another construct of this page; `"..."` is a text in double quotes. What the
            language itself writes as `(`, `)`, `|` or `..` is in quotes. Every word of the language may be a name as well.

            A file begins with its imports; families, procedures and shared stages follow in any order.

            """;

    private static final String UNITS = """
            ## Units of measure

            Units in one row measure the same, and one can stand for the other. Letter case counts. `µ`, `Ω` and `°C` are read as well. One unit through another is a unit, too, such as
            `mV/K`.

            | units |
            | --- |
            """;

    private final Injector language = new ProcedureIdeSetup().createInjectorAndDoEMFRegistration();
    private final List<ParserRule> rules = GrammarUtil.allParserRules(language.getInstance(ProcedureGrammarAccess.class)
            .getGrammar());
    private final Map<String, String> examples = new LinkedHashMap<>();
    private final Map<String, Set<RemarkCode>> remarks = new TreeMap<>();
    private final Map<String, String> notes = new LinkedHashMap<>();

    /** The page as it should be. */
    String text() throws IOException {
        gatherExamples();
        gatherRemarks();
        gatherNotes();
        StringBuilder page = new StringBuilder(HEAD);
        constructs().forEach(rule -> page.append(section(rule)));
        return page.append(units()).append(words()).toString();
    }

    /**
     * Rules that make something of the model; what is only a word or a number, or a choice of other constructs, has no
     * section of its own.
     */
    private List<ParserRule> constructs() {
        return rules.stream().filter(rule -> !rule.getName().equals("ProcedureFile")
                && !(rule.getType().getClassifier() instanceof EDataType)).toList();
    }

    private List<AbstractRule> inline() {
        return rules.stream().filter(rule -> rule.getType().getClassifier() instanceof EDataType
                && !EVERYDAY.contains(rule.getName()))
                .map(AbstractRule.class::cast).toList();
    }

    private String section(ParserRule rule) {
        StringBuilder text = new StringBuilder("## ").append(title(rule)).append("\n\n");
        text.append("    ").append(String.join("\n        ", wrapped(new GrammarSyntax(inline()).of(rule)))).append("\n\n");
        Optional.ofNullable(notes.get(title(rule))).ifPresent(note -> text.append(note).append("\n\n"));
        Optional.ofNullable(examples.get(rule.getName()))
                .ifPresent(example -> text.append("For example:\n\n```\n").append(example).append("\n```\n\n"));
        Set<RemarkCode> codes = remarks.getOrDefault(rule.getName(), Set.of());
        if (!codes.isEmpty()) {
            text.append(codes.stream().map(code -> "[" + code.word() + "](remarks/" + code.word() + ".md)")
                    .collect(Collectors.joining(", ", "Remarks: ", "\n\n")));
        }
        return text.toString();
    }

    private static String title(ParserRule rule) {
        String words = GrammarSyntax.words(rule.getName());
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static List<String> wrapped(String syntax) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : syntax.split(" ")) {
            if (line.length() + word.length() > LONGEST_LINE) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    // ---- examples

    private void gatherExamples() throws IOException {
        try (Stream<Path> files = Files.list(DEMO)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                gatherExamples(Files.readString(file));
            }
        }
        Map<String, String> demo = Map.copyOf(examples);
        gatherExamples(EverythingSaid.TEXT);
        gatherExamples(Bench.PROCEDURE);
        demo.forEach((name, example) -> examples.compute(name, (any, last) -> fits(example) ? example : last));
    }

    private void gatherExamples(String text) {
        for (INode node : root(text).getAsTreeIterable()) {
            if (node.getLength() > 0) {
                rule(node).ifPresent(name -> examples.merge(name, shown(text, node), LanguageReference::better));
            }
        }
    }

    /** The name of the rule that a node was made by; one that begins with nothing but a type carries that type's place. */
    private static Optional<String> rule(INode node) {
        if (node.getGrammarElement() instanceof RuleCall call && call.getRule() instanceof ParserRule rule) {
            return Optional.of(rule.getName());
        }
        return node.getGrammarElement() instanceof Action action ? Optional.of(GrammarUtil.containingRule(action).getName())
                : Optional.empty();
    }

    private INode root(String text) {
        return language.getInstance(IParser.class).parse(new StringReader(text)).getRootNode();
    }

    /** The more telling of two: of those that are short enough the longer one, else the shorter. */
    private static String better(String one, String other) {
        boolean oneFits = fits(one);
        if (oneFits != fits(other)) {
            return oneFits ? one : other;
        }
        return (one.length() >= other.length()) == oneFits ? one : other;
    }

    private static boolean fits(String example) {
        return example.lines().count() <= MOST_LINES && example.lines().allMatch(line -> line.length() <= LONGEST_LINE)
                && !example.contains("//");
    }

    /** The text of a node, moved to the left as a whole. */
    private static String shown(String text, INode node) {
        int lineStart = text.lastIndexOf('\n', node.getOffset()) + 1;
        String before = text.substring(lineStart, node.getOffset());
        int indent = before.isBlank() ? before.length() : before.length() - before.stripLeading().length();
        return text.substring(node.getOffset(), node.getEndOffset()).lines()
                .map(line -> line.substring(Math.min(indent, line.length() - line.stripLeading().length())))
                        .collect(Collectors.joining("\n"));
    }

    // ---- notes

    private void gatherNotes() throws IOException {
        Set<String> titles = constructs().stream().map(LanguageReference::title).collect(Collectors.toSet());
        for (String note : Files.readString(NOTES).split("(?m)^## ")) {
            if (!note.isBlank()) {
                String[] parts = note.split("\n\n", 2);
                if (!titles.contains(parts[0]) || notes.put(parts[0], parts[1].strip()) != null) {
                    throw new IllegalStateException(NOTES + " says something of \"" + parts[0]
                            + "\", of which there is not one construct");
                }
            }
        }
    }

    // ---- remarks

    /** The construct at which the example of each page earns its remark. */
    private void gatherRemarks() {
        for (RemarkCode code : RemarkCode.values()) {
            RemarkPage page = RemarkPage.of(code);
            if (page.hasExamples()) {
                List<SourceText> files = page.bad();
                for (Remark remark : Bench.LANGUAGE.checkTexts(files, RemarkPage.APPROVED).remarks()) {
                    String text = files.stream().filter(file -> file.path().equals(remark.file())).findFirst().orElseThrow()
                            .text();
                    construct(text, remark.offset())
                            .ifPresent(name -> remarks.computeIfAbsent(name, any -> new TreeSet<>()).add(code));
                }
            }
        }
    }

    private Optional<String> construct(String text, int offset) {
        Set<String> known = constructs().stream().map(AbstractRule::getName).collect(Collectors.toSet());
        for (INode node = NodeModelUtils.findLeafNodeAtOffset(root(text), offset); node != null; node = node.getParent()) {
            Optional<String> name = rule(node).filter(known::contains);
            if (name.isPresent()) {
                return name;
            }
        }
        return Optional.empty();
    }

    // ---- units of measure

    private static String units() {
        Map<UnitOfMeasure, List<String>> kinds = new LinkedHashMap<>();
        for (String word : UnitOfMeasure.words()) {
            UnitOfMeasure unit = UnitOfMeasure.of(word);
            UnitOfMeasure kind = kinds.keySet().stream().filter(unit::sameDimension).findFirst().orElse(unit);
            kinds.computeIfAbsent(kind, any -> new ArrayList<>()).add("`" + word + "`");
        }
        return kinds.values().stream().map(words -> "| " + String.join(", ", words) + " |\n").collect(Collectors.joining("", UNITS, "\n"));
    }

    // ---- words

    private static String words() {
        Properties meanings = new Properties();
        try (var file = ProcedureIdeSetup.class.getResourceAsStream("/org/benchwright/language/internal/editing/keywords.properties")) {
            meanings.load(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return meanings.stringPropertyNames().stream().sorted()
                .map(word -> "| `" + word + "` | " + meanings.getProperty(word).replace("|", "\\|") + " |\n")
                .collect(Collectors.joining("", "## All words\n\n| word | means |\n| --- | --- |\n", ""));
    }

    /** Writes the page anew. */
    public static void main(String[] none) throws IOException {
        Files.writeString(PAGE, new LanguageReference().text());
    }
}
