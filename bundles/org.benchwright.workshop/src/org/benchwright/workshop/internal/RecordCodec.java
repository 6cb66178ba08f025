package org.benchwright.workshop.internal;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;

/**
 * Records to JSON and back.
 *
 * <p>A record is an object with a field for each component. An empty optional has no field; a list always has one. Where the declared
 * type is a sealed interface, the field {@code type} holds the pinned name of the record. Everything else is a string (see
 * {@link Scalars}) or true or false. What a value does not need is refused when reading: unknown fields, nulls, numbers.
 */
final class RecordCodec {

    static final String TYPE = "type";

    private final TypeNames names;

    RecordCodec(TypeNames names) {
        this.names = names;
    }

    /** The record's fields alone, without its type. */
    ObjectNode fields(Record value) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            Object field = read(component, value);
            if (field instanceof Optional<?> optional) {
                Type inner = argument(component.getGenericType());
                optional.ifPresent(present -> node.set(component.getName(), encode(present, inner)));
            } else {
                node.set(component.getName(), encode(field, component.getGenericType()));
            }
        }
        return node;
    }

    private JsonNode encode(Object value, Type declared) {
        Class<?> type = rawType(declared);
        if (Scalars.knows(type)) {
            return TextNode.valueOf(Scalars.write(value, type));
        }
        if (value instanceof Boolean bool) {
            return BooleanNode.valueOf(bool);
        }
        if (value instanceof List<?> list) {
            ArrayNode array = JsonNodeFactory.instance.arrayNode(list.size());
            list.forEach(element -> array.add(encode(element, argument(declared))));
            return array;
        }
        ObjectNode node = fields((Record) value);
        if (type.isSealed()) {
            node.put(TYPE, names.nameOf(value.getClass()));
        }
        return node;
    }

    /** The record of that class with these fields. */
    <T> T record(JsonNode node, Class<T> type, String place) throws UndecodableException {
        return record(node, type, place, Set.of());
    }

    private <T> T record(JsonNode node, Class<T> type, String place, Set<String> alsoAllowed) throws UndecodableException {
        if (!node.isObject()) {
            throw new UndecodableException(place + ": an object was expected");
        }
        RecordComponent[] components = type.getRecordComponents();
        Set<String> known = new HashSet<>(alsoAllowed);
        Object[] arguments = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            known.add(components[i].getName());
            arguments[i] = component(node, components[i], place + "." + components[i].getName());
        }
        for (Iterator<String> fields = node.fieldNames(); fields.hasNext();) {
            String field = fields.next();
            if (!known.contains(field)) {
                throw new UndecodableException(place + ": unknown field \"" + field + "\"");
            }
        }
        return construct(type, components, arguments, place);
    }

    private Object component(JsonNode node, RecordComponent component, String place) throws UndecodableException {
        JsonNode field = node.get(component.getName());
        boolean optional = component.getType() == Optional.class;
        if (field == null) {
            if (optional) {
                return Optional.empty();
            }
            throw new UndecodableException(place + " is missing");
        }
        Type declared = component.getGenericType();
        return optional ? Optional.of(decode(field, argument(declared), place)) : decode(field, declared, place);
    }

    private Object decode(JsonNode node, Type declared, String place) throws UndecodableException {
        Class<?> type = rawType(declared);
        if (Scalars.knows(type)) {
            if (!node.isTextual()) {
                throw new UndecodableException(place + ": a string was expected");
            }
            return Scalars.read(node.textValue(), type)
                    .orElseThrow(() -> new UndecodableException(place + ": \"" + node.textValue() + "\" is not understood"));
        }
        if (type == boolean.class) {
            if (!node.isBoolean()) {
                throw new UndecodableException(place + ": true or false was expected");
            }
            return node.booleanValue();
        }
        if (type == List.class) {
            return list(node, argument(declared), place);
        }
        return type.isSealed() ? variant(node, type, place) : record(node, type, place);
    }

    private List<Object> list(JsonNode node, Type element, String place) throws UndecodableException {
        if (!node.isArray()) {
            throw new UndecodableException(place + ": a list was expected");
        }
        List<Object> list = new ArrayList<>(node.size());
        for (int i = 0; i < node.size(); i++) {
            list.add(decode(node.get(i), element, place + "[" + i + "]"));
        }
        return List.copyOf(list);
    }

    private Object variant(JsonNode node, Class<?> sealed, String place) throws UndecodableException {
        JsonNode name = node.get(TYPE);
        if (name == null || !name.isTextual()) {
            throw new UndecodableException(place + ": its type is missing");
        }
        Class<?> type = names.classOf(name.textValue()).filter(sealed::isAssignableFrom)
                .orElseThrow(() -> new UndecodableException(place + ": unknown type \"" + name.textValue() + "\""));
        return record(node, type, place, Set.of(TYPE));
    }

    private static <T> T construct(Class<T> type, RecordComponent[] components, Object[] arguments, String place)
            throws UndecodableException {
        Class<?>[] parameters = new Class<?>[components.length];
        for (int i = 0; i < components.length; i++) {
            parameters[i] = components[i].getType();
        }
        try {
            return type.getDeclaredConstructor(parameters).newInstance(arguments);
        } catch (InvocationTargetException refused) {
            throw new UndecodableException(place + ": " + refused.getCause().getMessage(), refused.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(type + " is no public record", e);
        }
    }

    private static Object read(RecordComponent component, Record value) {
        try {
            return component.getAccessor().invoke(value);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(value.getClass() + " is no public record", e);
        }
    }

    private static Class<?> rawType(Type type) {
        return type instanceof ParameterizedType generic ? (Class<?>) generic.getRawType() : (Class<?>) type;
    }

    private static Type argument(Type generic) {
        return ((ParameterizedType) generic).getActualTypeArguments()[0];
    }
}
