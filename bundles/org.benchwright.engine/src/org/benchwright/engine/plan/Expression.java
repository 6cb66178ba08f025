package org.benchwright.engine.plan;

import java.util.Map;

import org.benchwright.core.Quantity;

/** A sum or difference of named quantities. */
public sealed interface Expression {

    /**
     * Its value.
     *
     * @param values the quantities by name
     * @throws IllegalArgumentException if a name has no value, or dimensions differ
     */
    Quantity value(Map<String, Quantity> values);

    /** A named quantity. */
    record Name(String name) implements Expression {
        @Override
        public Quantity value(Map<String, Quantity> values) {
            Quantity value = values.get(name);
            if (value == null) {
                throw new IllegalArgumentException("no value for " + name);
            }
            return value;
        }
    }

    /** A fixed quantity. */
    record Fixed(Quantity quantity) implements Expression {
        @Override
        public Quantity value(Map<String, Quantity> values) {
            return quantity;
        }
    }

    /** One plus the other. */
    record Sum(Expression left, Expression right) implements Expression {
        @Override
        public Quantity value(Map<String, Quantity> values) {
            return left.value(values).plus(right.value(values));
        }
    }

    /** One minus the other. */
    record Difference(Expression left, Expression right) implements Expression {
        @Override
        public Quantity value(Map<String, Quantity> values) {
            return left.value(values).minus(right.value(values));
        }
    }
}
