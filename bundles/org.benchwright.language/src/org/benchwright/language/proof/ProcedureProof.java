package org.benchwright.language.proof;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.language.internal.proof.Sections;

/**
 * What a procedure proves, reckoned from its plan without any unit.
 *
 * @param name         the procedure's name
 * @param title        its title
 * @param revision     its revision
 * @param flow         its flow as a graph
 * @param paths        how many paths lead through it
 * @param times        how long a test takes
 * @param faults       what reveals each fault of the family
 * @param measurements the risks of each measurement, in the order of the text
 * @param soaks        what each soak detects
 */
public record ProcedureProof(String name, String title, int revision, FlowDiagram flow, PathCount paths, Times times, List<FaultProof> faults,
        List<MeasurementProof> measurements, List<SoakProof> soaks) {

    public ProcedureProof {
        Objects.requireNonNull(flow);
        Objects.requireNonNull(paths);
        Objects.requireNonNull(times);
        faults = List.copyOf(faults);
        measurements = List.copyOf(measurements);
        soaks = List.copyOf(soaks);
    }

    /**
     * All of it in words, tables and plots, as every face shows it.
     *
     * @param whatIf another length of the soaks to compare; above zero
     * @return one section for each {@link ProofSection.Subject}, in their order
     */
    public List<ProofSection> sections(Optional<Duration> whatIf) {
        return Sections.of(this, whatIf);
    }
}
