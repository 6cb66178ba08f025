package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.evidence.AnalysisOfVariance;
import org.benchwright.evidence.BenchCapacity;
import org.benchwright.evidence.Capability;
import org.benchwright.evidence.ChartConstants;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.Drift;
import org.benchwright.evidence.ExponentialFit;
import org.benchwright.evidence.FieldReturns;
import org.benchwright.evidence.GlobalRisk;
import org.benchwright.evidence.GoodnessOfFit;
import org.benchwright.evidence.HandTiming;
import org.benchwright.evidence.IntervalFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.LogRank;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.MedianRank;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.RepeatRisk;
import org.benchwright.evidence.SamplingPlan;
import org.benchwright.evidence.SequentialSoak;
import org.benchwright.evidence.Soak;
import org.benchwright.evidence.SoakDay;
import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.SuccessRun;
import org.benchwright.evidence.Summary;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.TestUncertaintyRatio;
import org.benchwright.evidence.TurnbullCurve;
import org.benchwright.evidence.Uncertainty;
import org.benchwright.evidence.VarianceSplit;
import org.benchwright.evidence.WeibullFit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Nonsense is refused, never answered: each public function, constructor and question is called with arguments that are fine but for one
 * number. What is no number at all is always refused; what is too large, too small or infinite is refused, or has an answer that is a number.
 */
class NonsenseTest {

    private static final List<Class<?>> ALL = List.of(AnalysisOfVariance.class, BenchCapacity.class, Capability.class, ChartConstants.class,
            ControlChart.class, Drift.class, ExponentialFit.class, FieldReturns.class, GlobalRisk.class, GlobalRisk.Span.class,
            GlobalRisk.Spread.class, GoodnessOfFit.class, HandTiming.Hand.class, HandTiming.Given.class, HandTiming.Sampled.class,
            IntervalFit.class, Lifetime.class, LogRank.class, MeasurementRisk.class, MedianRank.class, RepeatRisk.class, SequentialSoak.class,
            Soak.class, SoakDay.class, StopInterval.class, Summary.class, SurvivalCurve.class, TestUncertaintyRatio.class, TurnbullCurve.class,
            Uncertainty.class, VarianceSplit.Reading.class, WeibullFit.class);
    /** Records of answers: whoever makes one by hand answers for what is in it. */
    private static final List<Class<?>> ANSWERS = List.of(AnalysisOfVariance.class, ChartConstants.class, ControlChart.class, Drift.class,
            ExponentialFit.class, FieldReturns.class, GlobalRisk.class, IntervalFit.class, LogRank.class, SoakDay.class, Summary.class,
            SurvivalCurve.class, TurnbullCurve.class, WeibullFit.class);
    /** Where the numbers have an order among themselves: fine ones. */
    private static final Map<Class<?>, List<Double>> IN_ORDER = Map.of(Capability.class, List.of(-1.0, 1.0, 0.2, 0.5), SequentialSoak.class,
            List.of(100.0, 30.0, 0.1, 0.1), SoakDay.class, List.of(0.5, 2.0, 0.5));
    private static final double[] ODD = {-1, -1e-300, 0, Double.MIN_VALUE, Math.nextDown(1.0), 1, 1.5, 1e300, Double.MAX_VALUE,
        Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};

    /** A function or constructor, or something that is asked {@code on} what was made of fine numbers. */
    private record Call(Executable function, Optional<Object> on) {

        Object by(Object[] arguments) throws ReflectiveOperationException {
            return function instanceof Method method ? method.invoke(on.orElse(null), arguments)
                    : ((Constructor<?>) function).newInstance(arguments);
        }

        @Override
        public String toString() {
            return function + on.map(each -> " of " + each).orElse("");
        }
    }

    static Stream<Call> calls() {
        Stream<Call> functions = ALL.stream().flatMap(type -> Stream.<Executable>concat(
                Arrays.stream(type.getDeclaredMethods()).filter(method -> Modifier.isStatic(method.getModifiers())),
                ANSWERS.contains(type) ? Stream.of() : Arrays.stream(type.getDeclaredConstructors())))
                .map(each -> new Call(each, Optional.empty()));
        Stream<Call> questions = asked().flatMap(one -> Arrays.stream(one.getClass().getMethods())
                .filter(method -> !Modifier.isStatic(method.getModifiers()) && method.getDeclaringClass() != Object.class)
                .map(method -> new Call(method, Optional.of(one))));
        return Stream.concat(functions, questions)
                .filter(call -> Modifier.isPublic(call.function().getModifiers()) && numbers(call.function().getGenericParameterTypes()) > 0);
    }

    /** What can be asked about a number: one of each kind, such that 0.5 is a fine number, and so is 3. */
    private static Stream<Object> asked() {
        List<Lifetime> lifetimes = List.of(Lifetime.failedAt(1), Lifetime.failedAt(2), Lifetime.aliveAt(4));
        List<StopInterval> stops = List.of(new StopInterval(1, 2), new StopInterval(2, 3), StopInterval.never(4));
        SurvivalCurve curve = SurvivalCurve.of(lifetimes);
        Stream<Object> asked = Stream.of(BenchCapacity.of(8, 72, 0.05), Drift.of(List.of(1.0, 2.0, 3.0), List.of(5.0, 5.2, 5.1)),
                IntervalFit.weibull(stops), new Proportion(3, 20), new Proportion(0, 20), new Proportion(20, 20),
                new RepeatRisk(OptionalDouble.of(-1), OptionalDouble.of(1), 0.2, 0.1, 0.5, 2, Combination.MEAN), new SamplingPlan(2, 1),
                new SequentialSoak(1, 0.5, 0.1, 0.1), curve, curve.steps().get(0), TurnbullCurve.of(stops), new Uncertainty(1, 5.5),
                Uncertainty.known(1), WeibullFit.ofGroups(Collections.nCopies(4, lifetimes)));
        return Stream.of(asked, Stream.of(SuccessRun.values()), Stream.of(TestUncertaintyRatio.values())).flatMap(each -> each);
    }

    private static long numbers(Type[] parameters) {
        return Arrays.stream(parameters).filter(each -> each == double.class || each.getTypeName().contains("Double")).count();
    }

    @ParameterizedTest
    @MethodSource("calls")
    void whatIsNoNumberIsRefusedAndWhatIsOddNeverGivesNoNumber(Call function) throws Exception {
        Type[] parameters = function.function().getGenericParameterTypes();
        assertTrue(answer(function, fine(function.function())).isPresent(), function + " refuses what is fine");
        for (int place = 0; place < parameters.length; place++) {
            Optional<Object> none = with(parameters[place], Double.NaN);
            if (none.isPresent()) {
                assertTrue(refused(function, place, none.get()).isEmpty(), function + " answers NaN at " + place);
                for (double odd : ODD) {
                    int where = place;
                    refused(function, place, with(parameters[place], odd).get()).ifPresent(answer -> assertTrue(number(answer),
                            function + " gives " + answer + " for " + odd + " at " + where));
                }
            }
            if (parameters[place] instanceof ParameterizedType list && Collection.class.isAssignableFrom((Class<?>) list.getRawType())) {
                refused(function, place, List.of()).ifPresent(answer -> assertTrue(number(answer), function + " gives " + answer + " for nothing"));
            }
        }
    }

    /** The answer; nothing where the call is refused with words. */
    private static Optional<Object> refused(Call function, int place, Object odd) throws ReflectiveOperationException {
        Object[] arguments = fine(function.function());
        arguments[place] = odd;
        return answer(function, arguments);
    }

    private static Optional<Object> answer(Call function, Object[] arguments) throws ReflectiveOperationException {
        try {
            return Optional.of(function.by(arguments));
        } catch (InvocationTargetException e) {
            assertEquals(IllegalArgumentException.class, e.getCause().getClass(), () -> function + " of " + Arrays.toString(arguments));
            assertTrue(e.getCause().getMessage().length() > 8, () -> function + " says nothing");
            return Optional.empty();
        }
    }

    private static Object[] fine(Executable function) {
        Object[] arguments = Arrays.stream(function.getGenericParameterTypes()).map(NonsenseTest::fine).toArray();
        List<Double> inOrder = IN_ORDER.getOrDefault(function.getDeclaringClass(), List.of());
        int next = 0;
        for (int i = 0; i < arguments.length && next < inOrder.size(); i++) {
            arguments[i] = arguments[i] instanceof Double ? inOrder.get(next++) : arguments[i];
        }
        return arguments;
    }

    private static Object fine(Type type) {
        return with(type, type.getTypeName().contains("List") ? 5.5 : 0.5).orElseGet(() -> {
            if (type == int.class) {
                return 3;
            } else if (type == Duration.class) {
                return Duration.ofHours(1);
            } else if (type instanceof Class<?> plain && plain.isEnum()) {
                return plain.getEnumConstants()[0];
            } else if (type == BigDecimal.class) {
                return BigDecimal.ONE;
            } else if (type == boolean.class) {
                return true;
            }
            return other(type);
        });
    }

    private static Object other(Type type) {
        String name = type.getTypeName();
        if (name.contains("Map") && name.contains("Lifetime")) {
            return Map.of(Lifetime.failedAt(1), 2L, Lifetime.aliveAt(4), 3L);
        } else if (name.contains("Map") && name.contains("StopInterval")) {
            return Map.of(new StopInterval(1, 2), 2L, StopInterval.never(4), 3L);
        } else if (name.contains("Lifetime")) {
            return name.contains("List<java.util.List") ? List.of(List.of(Lifetime.failedAt(1), Lifetime.failedAt(2)))
                    : List.of(Lifetime.failedAt(1), Lifetime.aliveAt(4));
        } else if (name.contains("StopInterval")) {
            return List.of(new StopInterval(1, 2), new StopInterval(2, 3), StopInterval.never(4));
        } else if (name.contains("Span")) {
            return new GlobalRisk.Span(-1, 1);
        } else if (name.contains("Spread")) {
            return new GlobalRisk.Spread(0, 0.5, GlobalRisk.Shape.values()[0]);
        } else if (name.contains("String")) {
            return List.of("QN", "bench 2");
        } else if (name.contains("Long")) {
            return List.of(5L, 6L, 7L, 9L, 8L);
        } else if (type == Limits.class) {
            return Limits.between(Quantity.of("23", "V"), Quantity.of("25", "V"));
        } else if (type == Quantity.class) {
            return Quantity.of("0.02", "V");
        } else if (type == RepeatRisk.Taken.class) {
            return new RepeatRisk.Taken(2, 1, Combination.MEAN);
        } else if (type == RepeatRisk.class) {
            return new RepeatRisk(OptionalDouble.of(-1), OptionalDouble.of(1), 0.2, 0.1, 0.5, 2, Combination.MEAN);
        }
        throw new AssertionError("nothing fine for " + type);
    }

    /** A value of this type with one number in it; nothing where there is none. */
    private static Optional<Object> with(Type type, double number) {
        String name = type.getTypeName();
        if (type == double.class) {
            return Optional.of(number);
        } else if (type == OptionalDouble.class) {
            return Optional.of(OptionalDouble.of(number));
        } else if (name.equals("java.util.List<java.lang.Double>")) {
            return Optional.of(List.of(8.0, 6.0, number, 9.0, 7.0));
        } else if (name.contains("List<java.lang.Double>>")) {
            return Optional.of(List.of(List.of(8.0, number, 6.0), List.of(7.0, 9.0, 8.5)));
        }
        return Optional.empty();
    }

    /** Whether there is no NaN in an answer. */
    private static boolean number(Object answer) {
        if (answer instanceof Double each) {
            return !Double.isNaN(each);
        } else if (answer instanceof OptionalDouble each) {
            return each.isEmpty() || !Double.isNaN(each.getAsDouble());
        } else if (answer instanceof Collection<?> each) {
            return each.stream().allMatch(NonsenseTest::number);
        } else if (answer instanceof Record each) {
            return parts(each).stream().allMatch(NonsenseTest::number);
        }
        return true;
    }

    private static List<Object> parts(Record answer) {
        List<Object> parts = new ArrayList<>();
        for (RecordComponent component : answer.getClass().getRecordComponents()) {
            try {
                parts.add(component.getAccessor().invoke(answer));
            } catch (ReflectiveOperationException e) {
                throw new AssertionError(e);
            }
        }
        return parts;
    }
}
