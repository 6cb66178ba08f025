package org.benchwright.language.internal.inspect;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Claim;
import org.benchwright.model.Families;
import org.benchwright.model.Look;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Soak;
import org.benchwright.model.StopBehaviour;
import org.benchwright.model.StopKind;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/** A soak is observed, and can prove what is claimed of it. */
final class SoakInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        List<Soak> soaks = soaks(procedure);
        Optional<StopBehaviour> stop = Written.thing(procedure.getFamily()).flatMap(Families::stop);
        soaks.forEach(soak -> soak(soak, remarks));
        if (Written.thing(procedure.getFamily()).isPresent()) {
            soaks.forEach(soak -> stop(soak, stop, remarks));
        }
        Optional.ofNullable(procedure.getClaim()).ifPresent(claim -> claim(claim, soaks, remarks));
    }

    private static void soak(Soak soak, Remarks remarks) {
        if (soak.getKeeps().isEmpty()) {
            remarks.on(soak, RemarkCode.SOAK_KEEPS_NOTHING);
        }
        if (soak.getLook() == null && soak.getWatch() == null) {
            remarks.on(soak, RemarkCode.SOAK_UNOBSERVED);
        }
        if (!soak.isWitnessed()) {
            remarks.on(soak, Literals.SOAK__LENGTH, RemarkCode.SOAK_NOT_WITNESSED);
        }
        stops(soak, remarks);
        look(soak, remarks);
        Written.duration(soak.getLength()).ifPresent(length -> {
            within(length, soak.getLook(), Literals.LOOK__EVERY, remarks);
            within(length, soak.getWatch(), Literals.WATCH__EVERY, remarks);
            within(length, soak.getGap(), Literals.GAP__LONGEST, remarks);
        });
    }

    private static void within(Duration length, EObject part, EReference time, Remarks remarks) {
        Optional.ofNullable(part).flatMap(each -> Written.duration((Amount) each.eGet(time))).filter(each -> each.compareTo(length) > 0)
                .ifPresent(longer -> remarks.on(part, time, RemarkCode.LOOK_LONGER_THAN_SOAK));
    }

    /** Of two outcomes for one kind of stop the second would never be taken. */
    private static void stops(Soak soak, Remarks remarks) {
        Set<Boolean> seen = new HashSet<>();
        soak.getStops().stream().filter(stop -> !seen.add(stop.isOutsideConditions()))
                .forEach(stop -> remarks.on(stop, RemarkCode.LISTED_TWICE, stop.isOutsideConditions() ? "when stopped outside conditions"
                        : "when stopped"));
    }

    private static void look(Soak soak, Remarks remarks) {
        Look look = soak.getLook();
        if (look == null) {
            return;
        }
        if (look.isUnlessWatched() && soak.getWatch() == null) {
            remarks.on(look, Literals.LOOK__UNLESS_WATCHED, RemarkCode.UNLESS_WITHOUT_WATCH);
        }
        Optional<Duration> tolerance = Written.duration(look.getTolerance());
        if (tolerance.isPresent() && Written.duration(look.getEvery()).filter(every -> every.compareTo(tolerance.get()) <= 0).isPresent()) {
            remarks.on(look, Literals.LOOK__TOLERANCE, RemarkCode.LOOK_TOLERANCE_TOO_LARGE);
        }
    }

    private static void stop(Soak soak, Optional<StopBehaviour> stop, Remarks remarks) {
        if (stop.isEmpty()) {
            remarks.on(soak, RemarkCode.STOP_NOT_DECLARED);
        } else if (stop.get().getKind() == StopKind.RESTARTS && soak.getWatch() == null) {
            remarks.on(soak, RemarkCode.SOAK_NEEDS_WATCH);
        }
    }

    private static void claim(Claim claim, List<Soak> soaks, Remarks remarks) {
        Optional<Double> level = Written.share(claim.getLevel());
        if (level.isPresent() && (level.get() <= 0 || level.get() >= 1)) {
            remarks.on(claim, Literals.CLAIM__LEVEL, RemarkCode.LEVEL_OUT_OF_RANGE);
            return;
        }
        Optional<Duration> interval = Written.duration(claim.getInterval());
        Optional<Duration> longest = soaks.stream().flatMap(soak -> Written.duration(soak.getLength()).stream())
                .max(Duration::compareTo);
        if (soaks.isEmpty()) {
            remarks.on(claim, RemarkCode.CLAIM_WITHOUT_SOAK);
        } else if (level.isPresent() && interval.isPresent() && longest.isPresent()) {
            if (!org.benchwright.evidence.Soak.supports(longest.get(), interval.get(), level.get())) {
                remarks.on(claim, RemarkCode.CLAIM_UNSUPPORTED, percent(longest.get(), interval.get()));
            }
        }
    }

    /** The soaks that are long enough for what the procedure claims; none where it claims nothing. */
    static List<Soak> supporting(Procedure procedure) {
        Optional<Claim> claim = Optional.ofNullable(procedure.getClaim());
        Optional<Double> level = claim.flatMap(each -> Written.share(each.getLevel()));
        Optional<Duration> interval = claim.flatMap(each -> Written.duration(each.getInterval()));
        if (level.filter(share -> share > 0 && share < 1).isEmpty() || interval.isEmpty()) {
            return List.of();
        }
        return soaks(procedure).stream().filter(soak -> Written.duration(soak.getLength())
                .filter(length -> org.benchwright.evidence.Soak.supports(length, interval.get(), level.get())).isPresent()).toList();
    }

    private static List<Soak> soaks(Procedure procedure) {
        return procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast).toList();
    }

    /** Rounded down, so that what is printed is not more than what is proved. */
    private static String percent(Duration soak, Duration interval) {
        return Long.toString((long) Math.floor(100 * org.benchwright.evidence.Soak.detectionProbability(soak.toMillis(), interval.toMillis())));
    }
}
