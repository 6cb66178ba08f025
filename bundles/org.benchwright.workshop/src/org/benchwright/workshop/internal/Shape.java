package org.benchwright.workshop.internal;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a class of records consists of.
 *
 * @param components  its components in order
 * @param constructor the one that takes all of them
 */
record Shape(List<Component> components, Constructor<?> constructor) {

    /**
     * A component of a record.
     *
     * @param name     its name, which is also that of its field
     * @param optional whether it may be without a field
     * @param declared its type; of an optional one, that of the value in it
     */
    record Component(String name, boolean optional, Type declared) {
        private static Component of(RecordComponent component) {
            boolean optional = component.getType() == Optional.class;
            return new Component(component.getName(), optional,
                    optional ? RecordCodec.argument(component.getGenericType()) : component.getGenericType());
        }
    }

    /** The shape of a public record. */
    static Shape of(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] parameters = Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return new Shape(Arrays.stream(components).map(Component::of).toList(), type.getDeclaredConstructor(parameters));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(type + " is no public record", e);
        }
    }

    /**
     * A record with these values.
     *
     * @throws UndecodableException if the record refuses them
     */
    Object make(Object[] values) throws UndecodableException {
        try {
            return constructor.newInstance(values);
        } catch (InvocationTargetException refused) {
            throw new UndecodableException(": " + refused.getCause().getMessage(), refused.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(constructor + " is none of a public record", e);
        }
    }
}
