package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.evidence.RepeatRisk;
import org.benchwright.language.proof.MeasurementProof;
import org.benchwright.language.proof.MeasurementProof.Risks;
import org.benchwright.language.proof.ProofSection;
import org.benchwright.language.proof.ProofSection.Subject;

/** The risks of measurements in words and a table. */
final class RiskSection {

    private RiskSection() {
    }

    static ProofSection of(List<MeasurementProof> measurements) {
        String title = ProofText.of("title." + Subject.RISKS);
        if (measurements.isEmpty()) {
            return new ProofSection(Subject.RISKS, title, List.of(ProofText.of("risks.none")), List.of(), List.of(), List.of());
        }
        List<String> sentences = new ArrayList<>();
        Optional<MeasurementProof> worst = measurements.stream().filter(each -> each.risks().isPresent())
                .max(Comparator.comparingDouble(each -> each.risks().get().acceptBeyond()));
        worst.ifPresent(each -> sentences.add(ProofText.of("risks.worst", name(each), Numbers.risk(each.risks().get().acceptBeyond()))));
        List<String> unknown = measurements.stream().filter(each -> each.risks().isEmpty()).map(RiskSection::name).toList();
        if (!unknown.isEmpty()) {
            sentences.add(ProofText.of("risks.unknown", String.join(", ", unknown)));
        }
        List<String> assumptions = List.of(ProofText.of("assume.instrument"), ProofText.of("assume.specific"),
                ProofText.of("assume.global", Numbers.level(RiskReckoning.CONFORMING), RiskReckoning.SCATTER),
                ProofText.of("assume.repeats", Numbers.level(RepeatRisk.ASSUMED_COMMON_SHARE)));
        return new ProofSection(Subject.RISKS, title, sentences, assumptions,
                List.of(Sections.table("risks", measurements.stream().map(RiskSection::row).toList())), List.of());
    }

    private static String name(MeasurementProof measurement) {
        return measurement.step() + "." + measurement.name();
    }

    private static List<String> row(MeasurementProof each) {
        Optional<Risks> risks = each.risks();
        return List.of(name(each), each.limits().toString(), rule(each),
                each.expanded().map(u -> ProofText.of("risks.uncertainty", u, Numbers.three(each.coverage())))
                .orElseGet(() -> ProofText.of("risks.any")),
                risks.flatMap(r -> r.ratio().stream().mapToObj(ratio -> Numbers.three(ratio) + " : 1").findFirst()).orElse(""),
                risks.map(RiskSection::acceptBeyond).orElse(""), risks.map(r -> Numbers.risk(r.rejectInside())).orElse(""),
                risks.map(r -> Numbers.risk(r.accept())).orElse(""), risks.map(r -> Numbers.risk(r.reject())).orElse(""));
    }

    private static String acceptBeyond(Risks risks) {
        boolean same = risks.acceptBeyond() == risks.acceptBeyondOnce();
        return Numbers.risk(risks.acceptBeyond()) + (same ? "" : " " + ProofText.of("risks.once", Numbers.risk(risks.acceptBeyondOnce())));
    }

    private static String rule(MeasurementProof each) {
        StringBuilder rule = new StringBuilder(each.ruleWord());
        if (each.readings() > 1) {
            rule.append(", ").append(ProofText.of("risks.meanOf", each.readings()));
        }
        each.combinedWord().ifPresent(how -> rule.append(", ").append(ProofText.of("risks.times", each.mostTimes(), how)));
        if (each.cells() > 1) {
            rule.append(", ").append(ProofText.of("risks.cells", each.cells()));
        }
        return rule.toString();
    }
}
