package org.benchwright.workshop.tests;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.text.Normalizer;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.FlashRate;
import org.benchwright.core.Limits;
import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialMask;
import org.benchwright.core.UnitOfMeasure;

/** Values of any record type, the same ones for the same seed. */
final class RandomRecords {

    private static final int DEEPEST = 3;
    private static final List<String> TEXTS = List.of("", "W01", "23,9V", "Größe \u00e9", "\"quoted\\ and / slashed\"", "line\nbreak\ttab",
            "\u2028\u0001", "\ud83d\udd0c lamp", "a".repeat(300), "{\"type\":\"opened\"}", " padded ");

    private final Random random;

    RandomRecords(long seed) {
        this.random = new Random(seed);
    }

    /** A record of that class. */
    <T extends Record> T of(Class<T> type) {
        return type.cast(record(type, 0));
    }

    private Object value(Type declared, int depth) {
        Class<?> type = declared instanceof ParameterizedType generic ? (Class<?>) generic.getRawType() : (Class<?>) declared;
        if (type == Optional.class) {
            return random.nextBoolean() ? Optional.empty() : Optional.of(value(argument(declared), depth));
        }
        if (type == List.class) {
            return list(argument(declared), depth);
        }
        if (type.isEnum()) {
            Object[] constants = type.getEnumConstants();
            return constants[random.nextInt(constants.length)];
        }
        if (type.isSealed()) {
            return record(variant(type, depth), depth + 1);
        }
        return type.isRecord() ? record(type, depth + 1) : scalar(type);
    }

    private List<Object> list(Type element, int depth) {
        List<Object> list = new ArrayList<>();
        int size = depth > DEEPEST ? 1 : 1 + random.nextInt(2);
        for (int i = 0; i < size; i++) {
            list.add(value(element, depth + 1));
        }
        return List.copyOf(list);
    }

    /** Any record below the sealed type; deep down one that contains no further value of that type, so that it ends. */
    private Class<?> variant(Class<?> sealed, int depth) {
        List<Class<?>> all = Reach.leaves(sealed);
        List<Class<?>> ends = all.stream().filter(leaf -> !Reach.mentions(leaf, sealed)).toList();
        List<Class<?>> choice = depth > DEEPEST ? ends : all;
        return choice.get(random.nextInt(choice.size()));
    }

    private Object record(Class<?> type, int depth) {
        if (type == Quantity.class) {
            return quantity();
        } else if (type == Limits.class) {
            return limits();
        } else if (type == Actor.class) {
            return new Actor("QN" + random.nextInt(100), Role.values()[random.nextInt(Role.values().length)]);
        } else if (type == SerialMask.class) {
            return new SerialMask("C16-####" + random.nextInt(10));
        } else if (type == PointAddress.Register.class) {
            boolean bit = random.nextBoolean();
            return new PointAddress.Register(bit ? Table.COIL : Table.INPUT_REGISTER, random.nextInt(60_000),
                    bit ? NumberForm.BIT : NumberForm.FLOAT_64, random.nextBoolean(), random.nextBoolean());
        } else if (type == FlashRate.Around.class) {
            return new FlashRate.Around(Quantity.of("1." + random.nextInt(10), "Hz"), BigDecimal.valueOf(random.nextInt(100)));
        }
        RecordComponent[] components = type.getRecordComponents();
        Object[] arguments = new Object[components.length];
        Class<?>[] parameters = new Class<?>[components.length];
        for (int i = 0; i < components.length; i++) {
            parameters[i] = components[i].getType();
            arguments[i] = value(components[i].getGenericType(), depth);
        }
        try {
            return type.getDeclaredConstructor(parameters).newInstance(arguments);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(type + " could not be made", e);
        }
    }

    private Object scalar(Class<?> type) {
        if (type == String.class) {
            return Normalizer.normalize(TEXTS.get(random.nextInt(TEXTS.size())) + random.nextInt(10), Normalizer.Form.NFC);
        } else if (type == boolean.class) {
            return random.nextBoolean();
        } else if (type == int.class) {
            return random.nextInt();
        } else if (type == long.class) {
            return random.nextLong();
        } else if (type == BigDecimal.class) {
            return BigDecimal.valueOf(random.nextLong(), random.nextInt(30) - 10);
        } else if (type == Duration.class) {
            return Duration.ofMillis(random.nextLong() >> 8);
        } else if (type == Instant.class) {
            return Instant.ofEpochMilli(random.nextLong() >> 20);
        } else if (type == LocalDate.class) {
            return LocalDate.ofEpochDay(random.nextInt(60_000));
        } else if (type == UnitOfMeasure.class) {
            return unit();
        } else if (type == Digest.class) {
            return Digest.of(bytes());
        }
        throw new AssertionError("no random value for " + type);
    }

    private UnitOfMeasure unit() {
        Set<String> words = UnitOfMeasure.words();
        return UnitOfMeasure.of(words.stream().skip(random.nextInt(words.size())).findFirst().orElseThrow());
    }

    private Quantity quantity() {
        return new Quantity(BigDecimal.valueOf(random.nextInt(), random.nextInt(12)), unit());
    }

    private Limits limits() {
        Quantity lower = quantity();
        return switch (random.nextInt(3)) {
            case 0 -> Limits.atLeast(lower);
            case 1 -> Limits.atMost(lower);
            default -> Limits.between(lower, new Quantity(BigDecimal.valueOf(random.nextInt(), 2), lower.unit()));
        };
    }

    private byte[] bytes() {
        byte[] bytes = new byte[random.nextInt(20)];
        random.nextBytes(bytes);
        return bytes;
    }

    private static Type argument(Type generic) {
        return ((ParameterizedType) generic).getActualTypeArguments()[0];
    }
}
