package org.benchwright.present.tests;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;

/** Everything that a plan is made of, found by looking into its records. */
final class PlanWalk {

    private final Set<Object> found = new LinkedHashSet<>();

    private PlanWalk() {
    }

    /** All records in a record, and all texts that people read, itself included. */
    static Set<Object> of(Record root) {
        PlanWalk walk = new PlanWalk();
        walk.into(root);
        return walk.found;
    }

    private void into(Object part) {
        if (part instanceof Optional<?> optional) {
            optional.ifPresent(this::into);
        } else if (part instanceof Collection<?> many) {
            many.forEach(this::into);
        } else if (part instanceof String text) {
            // One word is a name, which is told in other words.
            if (text.contains(" ")) {
                found.add(text);
            }
        } else if (part instanceof Record record) {
            found.add(record);
            for (RecordComponent component : isValue(record) ? new RecordComponent[0] : record.getClass().getRecordComponents()) {
                into(value(component, record));
            }
        } else {
            found.add(part);
        }
    }

    /** Told as a whole. */
    private static boolean isValue(Record record) {
        return record instanceof Quantity || record instanceof Limits;
    }

    private static Object value(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (IllegalAccessException | InvocationTargetException impossible) {
            throw new AssertionError(component.toString(), impossible);
        }
    }
}
