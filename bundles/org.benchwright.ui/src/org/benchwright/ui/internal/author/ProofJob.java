package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;

import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.Proving;
import org.benchwright.language.proof.Telling;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.flow.FlowLayout;
import org.benchwright.ui.internal.flow.PlacedFlow;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Reckons what the procedures of a file prove, and lays their flows out. */
final class ProofJob extends Job {

    private final AuthorFolder folder;
    private final Path file;
    private final Proving proving;
    private final Watcher watcher;
    private final Optional<Telling> before;

    /** What there is to show of a procedure. */
    record Proved(ProcedureProof proof, PlacedFlow flow) {
    }

    /** Is told on the job's thread. */
    interface Watcher {

        /** What they prove. */
        void proved(Telling told, List<Proved> procedures);

        /** That can't be told until the errors are mended. */
        void notYet(Telling.NotYet errors);

        /** There is nothing, for this reason. */
        void failed(String words);
    }

    /** @param before what was told last; nothing is told of the same again */
    ProofJob(AuthorFolder folder, Path file, Proving proving, Optional<Telling> before, Watcher watcher) {
        super(Message.PROOF_JOB.text());
        this.folder = folder;
        this.file = file;
        this.proving = proving;
        this.before = before;
        this.watcher = watcher;
        setSystem(true);
        setPriority(DECORATE);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            Optional<Telling> telling = folder.session().telling(file, monitor::isCanceled);
            if (telling.equals(before)) {
                return Status.OK_STATUS;
            }
            if (telling.isPresent() && telling.get() instanceof Telling.NotYet notYet) {
                watcher.notYet(notYet);
            } else if (telling.isPresent() && telling.get() instanceof Telling.Told told) {
                watcher.proved(told, told.procedures().stream().map(each -> proved(each, monitor)).toList());
            }
            return Status.OK_STATUS;
        } catch (CancellationException stopped) {
            return Status.CANCEL_STATUS;
        } catch (RuntimeException mistake) {
            ILog.of(ProofJob.class).error(String.valueOf(mistake.getMessage()), mistake);
            watcher.failed(Message.PROOF_FAILED.text());
            return Status.OK_STATUS;
        }
    }

    private Proved proved(Provable procedure, IProgressMonitor monitor) {
        ProcedureProof proof = proving.prove(procedure, monitor::isCanceled);
        return new Proved(proof, FlowLayout.of(proof.flow(), monitor::isCanceled));
    }
}
