package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.engine.SoakAttempt;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.evidence.Soak;

/**
 * What the soaks of one test proved, in sentences: the same on the certificate, in the record, on the record sheet and at the end of the
 * test. They rest on the hours that were witnessed in this very test. Attempts are never added up: nobody declared that they may be.
 */
public final class SoakProof {

    private static final BigDecimal USUAL_CONFIDENCE = new BigDecimal("0.9");

    private final TestRun run;
    private final Optional<Claim> claim;
    private final double confidence;
    private final String percent;

    private SoakProof(TestRun run) {
        this.run = run;
        this.claim = run.plan().claim();
        BigDecimal wanted = claim.map(Claim::probability).orElse(USUAL_CONFIDENCE);
        this.confidence = wanted.doubleValue();
        this.percent = percent(wanted);
    }

    /** A sentence or two for each attempt at a soak, in order; none where the test had no soak yet. */
    public static List<String> of(TestRun run) {
        SoakProof proof = new SoakProof(run);
        return SoakAttempt.of(run).stream().map(proof::words).toList();
    }

    private String words(SoakAttempt attempt) {
        String watched = attempt.watching().map(w -> " " + EvidenceWords.SOAK_WATCHED.text(Durations.words(whole(w.watched())),
                Durations.words(whole(w.notSeen())))).orElse("");
        return proof(attempt) + watched;
    }

    private static Duration whole(Duration time) {
        return Duration.ofSeconds(time.toSeconds());
    }

    /** True if hours between looks, or a watch, may speak for the unit. */
    private boolean mayBeWitnessed(SoakAttempt attempt) {
        return run.plan().family().stopStays() || attempt.watching().isPresent();
    }

    private String proof(SoakAttempt attempt) {
        String name = Questions.spaced(attempt.stage());
        if (run.rehearsal()) {
            return rehearsed(name, attempt);
        } else if (!attempt.begun()) {
            return EvidenceWords.SOAK_NOT_BEGUN.text(name);
        } else if (attempt.outside()) {
            return EvidenceWords.SOAK_OUTSIDE.text(name, Durations.words(whole(attempt.witnessed())));
        } else if (attempt.stopped()) {
            return stopped(name, attempt);
        } else if (!mayBeWitnessed(attempt)) {
            return EvidenceWords.SOAK_UNWITNESSED.text(name);
        } else if (attempt.passed()) {
            return proved(name, attempt.witnessed());
        }
        EvidenceWords words = attempt.outcome().isEmpty() ? EvidenceWords.SOAK_GOING : EvidenceWords.SOAK_CUT_SHORT;
        return words.text(name, Durations.words(whole(attempt.witnessed())), planned(attempt.stage()));
    }

    private String proved(String name, Duration witnessed) {
        List<String> sentences = new ArrayList<>();
        sentences.add(EvidenceWords.SOAK_PROVED.text(name, Durations.words(whole(witnessed)), percent, revealed(witnessed)));
        claim.ifPresent(claimed -> {
            boolean holds = Soak.supports(witnessed, claimed.meanInterval(), confidence);
            sentences.add((holds ? EvidenceWords.SOAK_CLAIM_HOLDS : EvidenceWords.SOAK_CLAIM_FAILS).text(percent,
                    Durations.words(claimed.meanInterval())));
        });
        sentences.add(EvidenceWords.SOAK_ASSUMED.text());
        return String.join(" ", sentences);
    }

    /** The limits by one stop that ended the soak: the lower one from when it was last seen working, the upper from when it was found. */
    private String stopped(String name, SoakAttempt attempt) {
        if (!mayBeWitnessed(attempt)) {
            return EvidenceWords.SOAK_STOPPED_UNWITNESSED.text(name);
        }
        Duration by = attempt.stoppedBy().orElse(attempt.witnessed());
        Duration found = by.isZero() ? Duration.ofSeconds(1) : by;
        double most = Soak.limits(found.toMillis(), 1, confidence, Soak.End.AT_A_STOP).upper().orElseThrow();
        String longest = Durations.words(roundedUp(Duration.ofMillis((long) Math.ceil(most))));
        if (attempt.witnessed().isZero()) {
            return said(EvidenceWords.SOAK_STOPPED_AT_ONCE.text(name, Durations.words(wholeUp(found)), percent, longest));
        }
        double least = Soak.limits(attempt.witnessed().toMillis(), 1, confidence, Soak.End.AT_A_STOP).lower();
        return said(EvidenceWords.SOAK_STOPPED.text(name, Durations.words(whole(attempt.witnessed())), Durations.words(wholeUp(found)), percent,
                Durations.words(Durations.cutDown(Duration.ofMillis((long) least))), longest));
    }

    /** It had stopped by then: what a clock tells beyond the second is rounded up, never down. */
    private static Duration wholeUp(Duration time) {
        return time.getNano() == 0 ? time : Duration.ofSeconds(time.getSeconds() + 1);
    }

    private static String said(String bound) {
        return bound + " " + EvidenceWords.SOAK_STOPPED_ASSUMED.text();
    }

    private String rehearsed(String name, SoakAttempt attempt) {
        if (!attempt.passed() || !run.plan().family().stopStays()) {
            return EvidenceWords.SOAK_REHEARSED_ONLY.text(name);
        }
        return EvidenceWords.SOAK_REHEARSED.text(name, Durations.words(whole(attempt.witnessed())), percent, revealed(attempt.witnessed()));
    }

    private String revealed(Duration witnessed) {
        return Durations.words(Durations.cutDown(Soak.longestMeanTimeRevealed(witnessed, confidence)));
    }

    /** To the next whole hour, below an hour the next whole minute, below a minute the next whole second. */
    private static Duration roundedUp(Duration duration) {
        Duration down = Durations.cutDown(duration);
        Duration unit = down.toHours() > 0 ? Duration.ofHours(1) : down.toMinutes() > 0 ? Duration.ofMinutes(1) : Duration.ofSeconds(1);
        return down.equals(duration) ? duration : down.plus(unit);
    }

    private String planned(String stage) {
        return run.plan().stages().stream().filter(SoakStage.class::isInstance).map(SoakStage.class::cast)
                .filter(soak -> soak.name().equals(stage)).map(soak -> Durations.words(soak.lasting())).findFirst().orElseThrow();
    }

    private static String percent(BigDecimal share) {
        return share.movePointRight(2).stripTrailingZeros().toPlainString();
    }
}
