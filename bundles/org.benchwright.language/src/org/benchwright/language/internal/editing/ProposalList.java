package org.benchwright.language.internal.editing;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.benchwright.language.editing.Proposal;
import org.benchwright.language.internal.ParsedFile;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistContext;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistEntry;
import org.eclipse.xtext.ide.editor.contentassist.IIdeContentProposalAcceptor;
import org.eclipse.xtext.ide.editor.contentassist.antlr.ContentAssistContextFactory;
import org.eclipse.xtext.util.TextRegion;

import com.google.common.util.concurrent.MoreExecutors;
import com.google.inject.Injector;

/** Asks the framework what fits at a place, and puts it in order. */
final class ProposalList {

    private static final Comparator<Proposal> ORDER = Comparator.comparing(Proposal::kind)
            .thenComparing(proposal -> proposal.label().toLowerCase(Locale.ROOT)).thenComparing(Proposal::label);

    private final Injector injector;

    ProposalList(Injector injector) {
        this.injector = injector;
    }

    List<Proposal> at(ParsedFile file, int offset) {
        // The factory holds the state of one question.
        ContentAssistContextFactory contexts = injector.getInstance(ContentAssistContextFactory.class);
        contexts.setPool(MoreExecutors.newDirectExecutorService());
        ContentAssistContext[] found = contexts.create(file.readable(), new TextRegion(offset, 0), offset, file.resource());
        Map<String, Proposal> proposals = new LinkedHashMap<>();
        injector.getInstance(ProcedureProposals.class).createProposals(List.of(found), new IIdeContentProposalAcceptor() {
            @Override
            public void accept(ContentAssistEntry entry, int priority) {
                if (entry != null && entry.getSource() instanceof ProcedureProposals.Draft draft) {
                    Proposal proposal = proposal(entry, draft, offset);
                    proposals.merge(proposal.kind() == Proposal.Kind.TEMPLATE ? proposal.label() : proposal.text(), proposal,
                            (one, other) -> ORDER.compare(one, other) <= 0 ? one : other);
                }
            }

            @Override
            public boolean canAcceptMoreProposals() {
                return true;
            }
        });
        return proposals.values().stream().sorted(ORDER).toList();
    }

    private static Proposal proposal(ContentAssistEntry entry, ProcedureProposals.Draft draft, int offset) {
        int begin = offset - entry.getPrefix().length();
        return new Proposal(draft.kind(), draft.label(), draft.detail(), begin, entry.getPrefix().length(), entry.getProposal(),
                draft.slots());
    }
}
