package org.benchwright.language.internal.editing;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.editing.Proposal;
import org.benchwright.language.editing.Proposal.Slot;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.model.Families;
import org.benchwright.model.Lamp;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistContext;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistEntry;
import org.eclipse.xtext.ide.editor.contentassist.IIdeContentProposalAcceptor;
import org.eclipse.xtext.ide.editor.contentassist.IdeContentProposalProvider;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IScope;

/**
 * What fits where: words of the language, names that are declared, units of measure, whole statements. Where a new name is wanted nothing is
 * offered, though every word of the language could be one.
 */
class ProcedureProposals extends IdeContentProposalProvider {

    private static final Set<String> NAMES = Set.of("Name", "BareName");
    /** A lamp or display of such a name takes its kind before it. */
    private static final Set<String> KINDS_FIRST = Set.of("any", "display", "lamp", "mode");

    /**
     * What is shown of a proposal.
     *
     * @param kind   what it is
     * @param label  what is listed
     * @param detail what it means
     * @param slots  what is to be filled in
     */
    record Draft(Proposal.Kind kind, String label, String detail, List<Slot> slots) {
    }

    @Override
    protected void _createProposals(Keyword keyword, ContentAssistContext context, IIdeContentProposalAcceptor acceptor) {
        String rule = GrammarUtil.containingRule(keyword).getName();
        String word = keyword.getValue();
        if (NAMES.contains(rule) || !Character.isLetter(word.charAt(0))) {
            return;
        }
        offer(Proposal.Kind.KEYWORD, word, KeywordMeanings.of(word).orElse(""), context, acceptor);
        String text = context.getRootNode().getText();
        String newLine = TextPlaces.lineEnd(text) + new TextPlaces(text).indentation(context.getOffset());
        Templates.of(rule, word).forEach(template -> offer(template.filledIn(context.getCurrentModel(), newLine), context, acceptor));
    }

    @Override
    protected void _createProposals(Assignment assignment, ContentAssistContext context, IIdeContentProposalAcceptor acceptor) {
        AbstractElement value = assignment.getTerminal();
        if (value instanceof CrossReference reference) {
            _createProposals(reference, context, acceptor);
        } else if (value instanceof RuleCall call && call.getRule().getName().equals("UnitWord")) {
            UnitOfMeasure.words().forEach(word -> offer(Proposal.Kind.UNIT, word, "", context, acceptor));
        } else if (value instanceof RuleCall call && NAMES.contains(call.getRule().getName())) {
            names(assignment, context.getCurrentModel()).forEach(named -> offer(Proposal.Kind.NAME, named.getName(),
                    Descriptions.title(named), context, acceptor));
        } else if (value instanceof RuleCall call && call.getRule() instanceof ParserRule rule && GrammarUtil.isDatatypeRule(rule)) {
            Phrases.of(rule).forEach(phrase -> offer(Proposal.Kind.KEYWORD, phrase, KeywordMeanings.ofPhrase(phrase), context, acceptor));
        }
    }

    /** Names that stand for something, though they are no references: what is loaded, and what a condition is about. */
    private static Stream<? extends Named> names(Assignment assignment, EObject model) {
        return switch (GrammarUtil.containingRule(assignment).getName() + "." + assignment.getFeature()) {
            case "Load.items", "Load.leftOut" -> NameIndex.family(model).map(Families::loadItems).stream().flatMap(List::stream);
            case "Condition.name" -> Procedures.around(model, Procedure.class).map(Procedure::getPreconditions).stream()
                    .flatMap(List::stream).filter(precondition -> precondition.isReading());
            default -> Stream.of();
        };
    }

    @Override
    protected void _createProposals(CrossReference reference, ContentAssistContext context, IIdeContentProposalAcceptor acceptor) {
        Function<EObject, Optional<Named>> named = found -> Optional.of(found).filter(Named.class::isInstance).map(Named.class::cast);
        IScope scope = getScopeProvider().getScope(context.getCurrentModel(), GrammarUtil.getReference(reference));
        boolean bare = reference.getTerminal() instanceof RuleCall call && call.getRule().getName().equals("BareName");
        for (IEObjectDescription found : scope.getAllElements()) {
            EObject target = EcoreUtil.resolve(found.getEObjectOrProxy(), context.getCurrentModel());
            String name = found.getName().getLastSegment();
            named.apply(target).filter(each -> !target.eIsProxy()).ifPresent(each -> offer(Proposal.Kind.NAME, name,
                    bare && KINDS_FIRST.contains(name) ? kind(each) + " " + name : name, Descriptions.title(each), context, acceptor));
        }
    }

    /** The word that tells a lamp or a display whose name alone would be read as a word of the language. */
    private static String kind(Named named) {
        return named instanceof Lamp ? "lamp" : "display";
    }

    private static void offer(Proposal.Kind kind, String text, String detail, ContentAssistContext context,
            IIdeContentProposalAcceptor acceptor) {
        offer(kind, text, text, detail, context, acceptor);
    }

    /** @param name what is looked for by what is typed already */
    private static void offer(Proposal.Kind kind, String name, String text, String detail, ContentAssistContext context,
            IIdeContentProposalAcceptor acceptor) {
        if (name.toLowerCase(Locale.ROOT).startsWith(context.getPrefix().toLowerCase(Locale.ROOT))) {
            accept(text, new Draft(kind, text, detail, List.of()), context, acceptor);
        }
    }

    private static void offer(Templates.FilledIn template, ContentAssistContext context, IIdeContentProposalAcceptor acceptor) {
        if (template.label().toLowerCase(Locale.ROOT).startsWith(context.getPrefix().toLowerCase(Locale.ROOT))) {
            accept(template.text(), new Draft(Proposal.Kind.TEMPLATE, template.label(), template.detail(), template.slots()), context,
                    acceptor);
        }
    }

    private static void accept(String text, Draft draft, ContentAssistContext context, IIdeContentProposalAcceptor acceptor) {
        ContentAssistEntry entry = new ContentAssistEntry();
        entry.setPrefix(context.getPrefix());
        entry.setProposal(text);
        entry.setSource(draft);
        acceptor.accept(entry, 0);
    }
}
