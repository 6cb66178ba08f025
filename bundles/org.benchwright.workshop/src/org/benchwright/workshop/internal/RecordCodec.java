package org.benchwright.workshop.internal;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

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
    /** What the classes met so far consist of: asking them anew for every record takes longer than reading it. */
    private final Map<Class<?>, Shape> shapes = new ConcurrentHashMap<>();

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
        try {
            return type.cast(record(node, shape(type), false));
        } catch (UndecodableException e) {
            throw e.within(place);
        }
    }

    private Shape shape(Class<?> type) {
        return shapes.computeIfAbsent(type, Shape::of);
    }

    private Object record(JsonNode node, Shape shape, boolean typed) throws UndecodableException {
        if (!node.isObject()) {
            throw new UndecodableException(": an object was expected");
        }
        List<Shape.Component> components = shape.components();
        Object[] arguments = new Object[components.size()];
        int found = typed ? 1 : 0;
        for (int i = 0; i < arguments.length; i++) {
            Shape.Component component = components.get(i);
            JsonNode field = node.get(component.name());
            if (field != null) {
                found++;
            }
            arguments[i] = component(field, component);
        }
        if (found != node.size()) {
            throw unknown(node, shape, typed);
        }
        return shape.make(arguments);
    }

    private static UndecodableException unknown(JsonNode node, Shape shape, boolean typed) {
        for (Iterator<String> fields = node.fieldNames(); fields.hasNext();) {
            String field = fields.next();
            boolean known = typed && field.equals(TYPE) || shape.components().stream().anyMatch(component -> component.name().equals(field));
            if (!known) {
                return new UndecodableException(": unknown field \"" + field + "\"");
            }
        }
        throw new IllegalStateException("every field of " + node + " is known");
    }

    private Object component(JsonNode field, Shape.Component component) throws UndecodableException {
        try {
            if (field == null) {
                if (component.optional()) {
                    return Optional.empty();
                }
                throw new UndecodableException(" is missing");
            }
            Object value = decode(field, component.declared());
            return component.optional() ? Optional.of(value) : value;
        } catch (UndecodableException e) {
            throw e.within("." + component.name());
        }
    }

    private Object decode(JsonNode node, Type declared) throws UndecodableException {
        Class<?> type = rawType(declared);
        if (Scalars.knows(type)) {
            if (!node.isTextual()) {
                throw new UndecodableException(": a string was expected");
            }
            return Scalars.read(node.textValue(), type)
                    .orElseThrow(() -> new UndecodableException(": \"" + node.textValue() + "\" is not understood"));
        }
        if (type == boolean.class) {
            if (!node.isBoolean()) {
                throw new UndecodableException(": true or false was expected");
            }
            return node.booleanValue();
        }
        if (type == List.class) {
            return list(node, argument(declared));
        }
        return type.isSealed() ? variant(node, type) : record(node, shape(type), false);
    }

    private List<Object> list(JsonNode node, Type element) throws UndecodableException {
        if (!node.isArray()) {
            throw new UndecodableException(": a list was expected");
        }
        List<Object> list = new ArrayList<>(node.size());
        for (int i = 0; i < node.size(); i++) {
            try {
                list.add(decode(node.get(i), element));
            } catch (UndecodableException e) {
                throw e.within("[" + i + "]");
            }
        }
        return List.copyOf(list);
    }

    private Object variant(JsonNode node, Class<?> sealed) throws UndecodableException {
        JsonNode name = node.get(TYPE);
        if (name == null || !name.isTextual()) {
            throw new UndecodableException(": its type is missing");
        }
        Class<?> type = names.classOf(name.textValue()).filter(sealed::isAssignableFrom)
                .orElseThrow(() -> new UndecodableException(": unknown type \"" + name.textValue() + "\""));
        return record(node, shape(type), true);
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

    static Type argument(Type generic) {
        return ((ParameterizedType) generic).getActualTypeArguments()[0];
    }
}
