package org.benchwright.language.internal.parse;

import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.internal.parse.NamedReferences.Use;
import org.benchwright.model.Named;
import org.benchwright.model.Step;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;

import com.google.inject.Injector;
import com.google.inject.Key;
import com.google.inject.name.Names;

/**
 * Changes of a file that stay within one step. That step alone is read again; everything else stays the very same objects. What comes
 * out is what reading the whole text gives.
 *
 * <p>That holds because a step begins with a word and ends with a brace that nothing inside can move, so that neither the words around
 * it nor what the grammar makes of them depend on what it says. Whatever is not sure to be so is left to reading the whole text.
 */
public final class StepEdits {

    private static final int FIRST_WORD = "step".length();

    private final Injector injector;
    private final ProcedureResource file;
    private Optional<NamedReferences> references = Optional.empty();

    /**
     * Prepares for changes of a file.
     *
     * @param injector the language
     * @param file     the file
     */
    public StepEdits(Injector injector, ProcedureResource file) {
        this.injector = injector;
        this.file = file;
    }

    /** The file was read as a whole. */
    public void readWhole() {
        references = Optional.empty();
    }

    /**
     * Makes a change, if it stays within one step.
     *
     * @param before the file's characters
     * @param after  what they are to be
     * @return the steps that say, or may mean, something else than before, gone ones included; empty if the whole text has to be read,
     *         and nothing has changed so far
     */
    public Optional<Set<Step>> change(String before, String after) {
        if (!hasSoundTree() || before.isEmpty()) {
            return Optional.empty();
        }
        TextChange change = TextChange.between(before, after);
        return place(change).flatMap(place -> graft(place, change, after).map(graft -> put(place, graft, after)));
    }

    private boolean hasSoundTree() {
        IParseResult known = file.getParseResult();
        return known != null && (!known.hasSyntaxErrors() || known instanceof StepwiseResult);
    }

    private Set<Step> broken() {
        return file.getParseResult() instanceof StepwiseResult stepwise ? stepwise.broken() : Set.of();
    }

    /** The step around a change that leaves its first word and its last brace alone. */
    private Optional<ICompositeNode> place(TextChange change) {
        INode there = NodeModelUtils.findLeafNodeAtOffset(file.getParseResult().getRootNode(), change.offset());
        return Optional.ofNullable(there).flatMap(StepGraft::around)
                .filter(step -> step.getOffset() + FIRST_WORD < change.offset() && change.end() < step.getEndOffset())
                .filter(StepEdits::followsBrace);
    }

    private static boolean followsBrace(ICompositeNode step) {
        int begin = step.getTotalOffset();
        char before = begin == 0 ? ' ' : step.getRootNode().getText().charAt(begin - 1);
        return before == '{' || before == '}';
    }

    private Optional<StepGraft> graft(ICompositeNode place, TextChange change, String after) {
        String text = after.substring(place.getTotalOffset(), place.getEndOffset() + change.longer());
        Lexer lexer = injector.getInstance(Key.get(Lexer.class, Names.named(LexerBindings.RUNTIME)));
        // Braces end every nesting, so that a step is as deep alone as among others.
        if (!StepSpans.isOne(lexer, text) || NestingScan.tooDeep(lexer, text).isPresent()) {
            return Optional.empty();
        }
        return StepGraft.read(file.getParser(), place, text).filter(graft -> !graft.isBroken() || broken().size() < StepwiseResult.MOST_BROKEN);
    }

    private Set<Step> put(ICompositeNode place, StepGraft graft, String after) {
        NamedReferences known = references.orElseGet(() -> new NamedReferences(file));
        references = Optional.of(known);
        Step old = (Step) place.getSemanticElement();
        Set<String> names = new HashSet<>(names(old));
        known.forget(old);
        graft.put(after);
        file.partReplaced(result(old, graft));
        StepLinker linker = injector.getInstance(StepLinker.class);
        linker.linkPart(graft.step());
        names.addAll(names(graft.step()));
        Set<Step> touched = steps(Set.of(old));
        for (Use use : known.of(names)) {
            NamedReferences.holder(use).ifPresent(touched::add);
            known.forget(use);
            linker.lookUpAgain(use.holder(), use.reference(), use.node());
        }
        known.readOn();
        return touched;
    }

    private IParseResult result(Step old, StepGraft graft) {
        Set<Step> broken = steps(broken());
        broken.remove(old);
        if (graft.isBroken()) {
            broken.add(graft.step());
        }
        IParseResult known = file.getParseResult();
        return new StepwiseResult(known.getRootASTElement(), known.getRootNode(), broken);
    }

    private static Set<Step> steps(Set<Step> some) {
        Set<Step> steps = Collections.newSetFromMap(new IdentityHashMap<>());
        steps.addAll(some);
        return steps;
    }

    /** What others can refer to. */
    private static Set<String> names(Step step) {
        Set<String> names = new HashSet<>();
        Optional.ofNullable(step.getName()).ifPresent(names::add);
        step.eAllContents().forEachRemaining(each -> {
            if (each instanceof Named named && named.getName() != null) {
                names.add(named.getName());
            }
        });
        return names;
    }
}
