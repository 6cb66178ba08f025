package org.benchwright.workshop.tests;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What can be reached from a type through components and sealed subtypes. */
final class Reach {

    private Reach() {
    }

    /** The records at the end of a sealed hierarchy. */
    static List<Class<?>> leaves(Class<?> sealed) {
        List<Class<?>> leaves = new ArrayList<>();
        for (Class<?> permitted : sealed.getPermittedSubclasses()) {
            if (permitted.isRecord()) {
                leaves.add(permitted);
            } else {
                leaves.addAll(leaves(permitted));
            }
        }
        return leaves;
    }

    /** The types that a record's components are made of, themselves only. */
    static List<Class<?>> parts(Class<?> record) {
        List<Class<?>> parts = new ArrayList<>();
        for (RecordComponent component : record.getRecordComponents()) {
            Type type = component.getGenericType();
            while (type instanceof ParameterizedType generic) {
                type = generic.getActualTypeArguments()[0];
            }
            parts.add((Class<?>) type);
        }
        return parts;
    }

    /** All records and sealed types that can be reached from one. */
    static Set<Class<?>> from(Class<?> start) {
        Set<Class<?>> found = new LinkedHashSet<>();
        Deque<Class<?>> open = new ArrayDeque<>(List.of(start));
        while (!open.isEmpty()) {
            Class<?> type = open.pop();
            if (!(type.isRecord() || type.isSealed() || type.isEnum()) || !found.add(type)) {
                continue;
            }
            if (type.isSealed()) {
                open.addAll(leaves(type));
            } else if (type.isRecord()) {
                open.addAll(parts(type));
            }
        }
        return found;
    }

    /** True if a value of {@code record} can contain one of {@code sealed}. */
    static boolean mentions(Class<?> record, Class<?> sealed) {
        return parts(record).stream().anyMatch(part -> part == sealed || part.isSealed() && part != sealed && from(part).contains(sealed)
                || part.isRecord() && from(part).contains(sealed));
    }
}
