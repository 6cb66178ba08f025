package org.benchwright.language.internal.difference;

import java.lang.reflect.RecordComponent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.FlashRate;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.Plan;

/**
 * Walks two plans side by side. Things with a name are compared with the thing of that name, so that one that was moved is not one that is
 * gone and another that is new; everything else is compared in its place.
 */
public final class PlanDifferences {

    private final List<String> found = new ArrayList<>();

    private PlanDifferences() {
    }

    /**
     * What has changed.
     *
     * @param before the older plan
     * @param after  the newer one
     * @return a sentence for each difference, in the order of the plan; empty if they mean the same
     */
    public static List<String> between(Plan before, Plan after) {
        PlanDifferences differences = new PlanDifferences();
        differences.records("", before, after);
        return List.copyOf(differences.found);
    }

    private void records(String place, Record before, Record after) {
        for (RecordComponent component : before.getClass().getRecordComponents()) {
            compare(place, component.getName(), value(component, before), value(component, after));
        }
    }

    private void compare(String place, String part, Object before, Object after) {
        Object one = before instanceof Optional<?> optional ? optional.orElse(null) : before;
        Object other = after instanceof Optional<?> optional ? optional.orElse(null) : after;
        if (Objects.equals(one, other)) {
            return;
        }
        if (one instanceof List<?> list && other instanceof List<?> others) {
            lists(place, part, list, others);
        } else if (one instanceof Record record && other instanceof Record another && record.getClass() == another.getClass() && !isValue(one)) {
            records(inside(place, name(one).orElseGet(() -> DifferenceText.part(part))), record, another);
        } else {
            found.add(DifferenceText.of("became", place, DifferenceText.part(part), words(one), words(other)));
        }
    }

    private void lists(String place, String part, List<?> before, List<?> after) {
        boolean named = !before.isEmpty() && before.stream().allMatch(each -> name(each).isPresent())
                || !after.isEmpty() && after.stream().allMatch(each -> name(each).isPresent());
        if (!named) {
            if (before.size() == after.size() && before.stream().allMatch(Record.class::isInstance)) {
                for (int i = 0; i < before.size(); i++) {
                    compare(place, part, before.get(i), after.get(i));
                }
            } else {
                found.add(DifferenceText.of("became", place, DifferenceText.part(part), words(before), words(after)));
            }
            return;
        }
        named(place, part, byName(before), byName(after));
    }

    private void named(String place, String part, Map<String, Object> before, Map<String, Object> after) {
        before.forEach((name, one) -> {
            if (after.containsKey(name)) {
                compare(place, part, one, after.get(name));
            } else {
                found.add(DifferenceText.of("removed", place, DifferenceText.part(part), name));
            }
        });
        after.keySet().stream().filter(name -> !before.containsKey(name))
                .forEach(name -> found.add(DifferenceText.of("added", place, DifferenceText.part(part), name)));
        List<String> kept = before.keySet().stream().filter(after::containsKey).toList();
        List<String> now = after.keySet().stream().filter(before::containsKey).toList();
        if (!kept.equals(now)) {
            found.add(DifferenceText.of("order", place, String.join(", ", kept), String.join(", ", now)));
        }
    }

    private static Map<String, Object> byName(List<?> things) {
        Map<String, Object> byName = new LinkedHashMap<>();
        things.forEach(each -> byName.put(name(each).orElseThrow(), each));
        return byName;
    }

    /** By what people tell it from its neighbours. */
    private static Optional<String> name(Object thing) {
        for (String key : List.of("name", "id", "code")) {
            for (RecordComponent component : thing instanceof Record ? thing.getClass().getRecordComponents() : new RecordComponent[0]) {
                if (component.getName().equals(key) && value(component, (Record) thing) instanceof String text) {
                    return Optional.of(text);
                }
            }
        }
        return Optional.empty();
    }

    private static String inside(String place, String name) {
        String outer = place.isEmpty() ? "" : place.substring(0, place.length() - 2);
        return DifferenceText.of("inside", outer.isEmpty() ? name : DifferenceText.of("both", outer, name));
    }

    private static boolean isValue(Object thing) {
        return thing instanceof Quantity || !(thing instanceof Limits) && thing.getClass().getRecordComponents().length == 0;
    }

    private static String words(Object value) {
        if (value == null) {
            return DifferenceText.of("nothing");
        } else if (value instanceof Boolean yes) {
            return DifferenceText.of(yes ? "yes" : "no");
        } else if (value instanceof Duration time) {
            return Durations.words(time);
        } else if (value instanceof FlashRate rate) {
            return rate.words();
        } else if (value instanceof Enum<?> word) {
            return word.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        } else if (value instanceof List<?> list) {
            return list.isEmpty() ? DifferenceText.of("nothing") : list.stream().map(PlanDifferences::words).collect(Collectors.joining(", "));
        } else if (value instanceof Optional<?> optional) {
            return words(optional.orElse(null));
        } else if (value instanceof Record thing && !(value instanceof Quantity) && !(value instanceof Limits)) {
            return recordWords(thing);
        }
        return String.valueOf(value);
    }

    private static String recordWords(Record thing) {
        String kind = thing.getClass().getSimpleName().replaceAll("(.)([A-Z])", "$1 $2").toLowerCase(Locale.ROOT);
        List<String> parts = new ArrayList<>(List.of(kind));
        for (RecordComponent component : thing.getClass().getRecordComponents()) {
            Object part = value(component, thing);
            if (!(part instanceof Optional<?> optional && optional.isEmpty()) && !"".equals(part)) {
                parts.add(words(part));
            }
        }
        return String.join(" ", parts);
    }

    private static Object value(RecordComponent component, Record holder) {
        try {
            return component.getAccessor().invoke(holder);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(holder.getClass() + " is no public record", impossible);
        }
    }
}
