package org.benchwright.language.internal.fix;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.internal.inspect.Written;
import org.benchwright.model.Amount;
import org.benchwright.model.Axis;
import org.benchwright.model.Claim;
import org.benchwright.model.Instrument;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampGroup;
import org.benchwright.model.LampIndication;
import org.benchwright.model.LampState;
import org.benchwright.model.Limits;
import org.benchwright.model.Look;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Timing;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;

/** Numbers, limits, colours and times. */
final class AmountFixes {

    /** What people write who don't know how instruments write it. */
    private static final Map<String, String> UNITS_IN_FULL = Map.ofEntries(Map.entry("second", "s"), Map.entry("sec", "s"),
            Map.entry("minute", "min"),
            Map.entry("hour", "h"), Map.entry("hr", "h"), Map.entry("day", "d"), Map.entry("volt", "V"), Map.entry("millivolt", "mV"),
            Map.entry("amp", "A"), Map.entry("ampere", "A"), Map.entry("milliamp", "mA"), Map.entry("milliampere", "mA"), Map.entry("hertz", "Hz"),
            Map.entry("kelvin", "K"), Map.entry("celsiu", "degC"), Map.entry("c", "degC"), Map.entry("percent", "%"), Map.entry("watt", "W"));

    private AmountFixes() {
    }

    static List<Fix> swapLimits(Spot spot) {
        if (spot.object() instanceof Limits || spot.around(Limits.class).isPresent()) {
            return swap(spot, spot.around(Limits.class).get());
        } else if (spot.object() instanceof LampGroup group) {
            return swap(spot, group, Literals.LAMP_GROUP__FIRST, Literals.LAMP_GROUP__LAST);
        }
        return spot.around(Axis.class).map(axis -> swap(spot, axis, Literals.AXIS__VALUES, Literals.AXIS__LAST)).orElse(List.of());
    }

    /** With their units, where each limit has one. */
    private static List<Fix> swap(Spot spot, Limits limits) {
        List<Fix> numbers = swap(spot, limits, Literals.LIMITS__LOWER, Literals.LIMITS__UPPER);
        List<Fix> units = swap(spot, limits, Literals.LIMITS__LOWER_UNIT, Literals.LIMITS__UNIT);
        if (limits.getLowerUnit() == null || numbers.isEmpty() || units.isEmpty()) {
            return numbers;
        }
        return Spot.one(FixText.SWAP, Stream.concat(numbers.get(0).edits().stream(), units.get(0).edits().stream()).toArray(Edit[]::new));
    }

    private static List<Fix> swap(Spot spot, EObject of, EStructuralFeature one, EStructuralFeature other) {
        Optional<INode> lower = Spot.node(of, one);
        Optional<INode> upper = Spot.node(of, other);
        if (lower.isEmpty() || upper.isEmpty()) {
            return List.of();
        }
        return Spot.one(FixText.SWAP, spot.replace(lower.get(), Spot.text(upper.get())), spot.replace(upper.get(), Spot.text(lower.get())));
    }

    /** The word or number that the remark stands on, replaced. */
    static List<Fix> by(Spot spot, String text) {
        return Spot.one(FixText.REPLACE, text, spot.edit(spot.remark().offset(), spot.remark().length(), text));
    }

    /** The number of an amount, replaced with its unit. */
    static List<Fix> amountBy(Spot spot, String text) {
        return spot.around(Amount.class).map(amount -> Spot.one(FixText.REPLACE, text, spot.replace(Spot.node(amount), text))).orElse(List.of());
    }

    static List<Fix> kelvin(Spot spot) {
        Optional<Limits> limits = spot.around(Limits.class);
        if (limits.isPresent()) {
            return Spot.nodes(limits.get(), Literals.LIMITS__UNIT).stream().findFirst()
                    .map(unit -> Spot.one(FixText.REPLACE, "K", spot.replace(unit, "K"))).orElse(List.of());
        }
        return by(spot, "K");
    }

    static List<Fix> negativeLower(Spot spot) {
        return spot.around(Limits.class).flatMap(limits -> Spot.node(limits, Literals.LIMITS__LOWER)).map(lower -> {
            String number = "-" + Spot.text(lower).replaceFirst("^[+]", "");
            return Spot.one(FixText.REPLACE, number, spot.replace(lower, number));
        }).orElse(List.of());
    }

    static List<Fix> positiveUncertainty(Spot spot) {
        return spot.around(Instrument.class).map(Instrument::getUncertainty).map(amount -> {
            String number = Spot.text(Spot.node(amount)).replaceFirst("^-\\s*", "");
            return Spot.one(FixText.REPLACE, number, spot.replace(Spot.node(amount), number));
        }).orElse(List.of());
    }

    static List<Fix> coverage(Spot spot) {
        return spot.around(Instrument.class).flatMap(instrument -> Spot.node(instrument, Literals.INSTRUMENT__COVERAGE))
                .map(node -> Spot.one(FixText.REPLACE, "2", spot.replace(node, "2"))).orElse(List.of());
    }

    // ---- colours

    static List<Fix> colours(Spot spot) {
        Optional<LampState> state = spot.around(LampState.class);
        Optional<Lamp> lamp = spot.around(LampIndication.class).map(LampIndication::getLamp);
        if (state.isEmpty() || lamp.isEmpty()) {
            return List.of();
        }
        Optional<INode> colour = Spot.node(state.get(), Literals.LAMP_STATE__COLOUR);
        return lamp.get().getColours().stream().distinct().map(each -> each.name().toLowerCase(Locale.ROOT))
                .map(word -> colour.map(node -> new Fix(FixText.REPLACE.text(word), List.of(spot.replace(node, word))))
                        .orElseGet(() -> new Fix(FixText.INSERT.text(word), List.of(spot.before(Spot.node(state.get()), word + " ")))))
                .toList();
    }

    // ---- times

    static List<Fix> asLongAsSoak(Spot spot) {
        return spot.around(Soak.class).map(Soak::getLength).map(length -> amountBy(spot, Spot.text(Spot.node(length)))).orElse(List.of());
    }

    static List<Fix> longerStage(Spot spot) {
        Optional<Stage> stage = spot.around(Stage.class).filter(each -> each.getLongest() != null);
        return stage.map(each -> {
            Duration together = each.getSteps().stream().map(Written::duration).reduce(Duration.ZERO, Duration::plus);
            String time = words(Duration.ofSeconds(together.plusMillis(999).toSeconds()));
            return Spot.one(FixText.LONGER, time, spot.replace(Spot.node(each.getLongest()), time));
        }).orElse(List.of());
    }

    /** As long as the deadline that the remark is about. */
    static List<Fix> stageAsLongAsDeadline(Spot spot) {
        Optional<Stage> stage = spot.around(Stage.class).filter(each -> each.getLongest() != null);
        Optional<Timing> timing = spot.around(Timing.class);
        if (stage.isEmpty() || timing.isEmpty()) {
            return List.of();
        }
        String time = words(together(Stream.of(timing.get().getWithin(), timing.get().getFrom(), timing.get().getLasting())));
        return Spot.one(FixText.LONGER, time, spot.replace(Spot.node(stage.get().getLongest()), time));
    }

    /** A twelfth of the time between two looks: two hours of a day. */
    static List<Fix> lookTolerance(Spot spot) {
        Optional<Look> look = spot.around(Look.class).filter(each -> each.getTolerance() != null);
        return look.flatMap(each -> Written.seconds(each.getEvery())).map(every -> {
            Duration twelfth = Duration.ofSeconds(Math.max(1, every.longValue() / 12));
            String time = Durations.words(Durations.cutDown(twelfth));
            return Spot.one(FixText.REPLACE, time, spot.replace(Spot.node(look.get().getTolerance()), time));
        }).orElse(List.of());
    }

    /** The nearest number that a group has; a single lamp has none. */
    static List<Fix> lampNumber(Spot spot) {
        Optional<LampIndication> shown = spot.around(LampIndication.class).filter(each -> each.getIndex() != null);
        Optional<INode> number = shown.flatMap(each -> Spot.node(each, Literals.LAMP_INDICATION__INDEX));
        if (number.isEmpty()) {
            return List.of();
        } else if (shown.get().getLamp() instanceof LampGroup group) {
            return by(spot, Integer.toString(Math.max(group.getFirst(), Math.min(shown.get().getIndex(), group.getLast()))));
        }
        return Spot.one(FixText.REMOVE, Spot.text(number.get()), spot.remove(number.get()));
    }

    /** The unit that is called so in full, or that is written so with other letter case. */
    static List<Fix> unit(Spot spot) {
        String written = spot.remarked();
        String full = written.toLowerCase(Locale.ROOT);
        return Stream.concat(Stream.ofNullable(UNITS_IN_FULL.get(full.endsWith("s") ? full.substring(0, full.length() - 1) : full)),
                UnitOfMeasure.words().stream().filter(word -> word.equalsIgnoreCase(written))).distinct()
                .flatMap(word -> by(spot, word).stream()).toList();
    }

    /** In whole seconds, rounded up; what is no time adds nothing, and has a remark of its own. */
    private static Duration together(Stream<Amount> times) {
        BigDecimal seconds = times.flatMap(time -> Written.seconds(time).stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
        return Duration.ofSeconds(seconds.setScale(0, RoundingMode.CEILING).longValue());
    }

    private static String words(Duration time) {
        return time.toSecondsPart() == 0 ? time.toMinutes() + " min" : time.toSeconds() + " s";
    }

    /** The rarest fault that the longest soak reveals at the level that is claimed, in whole hours, or minutes, or seconds. */
    static List<Fix> claimLess(Spot spot) {
        Optional<Procedure> procedure = spot.around(Procedure.class);
        Optional<Claim> claim = procedure.map(Procedure::getClaim);
        if (claim.isEmpty()) {
            return List.of();
        }
        double longest = procedure.get().getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast)
                .flatMap(soak -> Written.seconds(soak.getLength()).stream()).mapToDouble(BigDecimal::doubleValue).max().orElse(0);
        Optional<Double> level = Written.share(claim.get().getLevel()).filter(share -> share > 0 && share < 1);
        if (level.isEmpty()) {
            return List.of(); // another remark says that there is no such level
        }
        String time = Durations.words(Durations.cutDown(
                org.benchwright.evidence.Soak.longestMeanTimeRevealed(Duration.ofSeconds((long) longest), level.get())));
        return Spot.one(FixText.CLAIM_LESS, time, spot.replace(Spot.node(claim.get().getInterval()), time));
    }
}
