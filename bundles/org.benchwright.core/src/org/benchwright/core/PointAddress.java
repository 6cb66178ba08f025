package org.benchwright.core;

import java.util.Objects;

import org.benchwright.core.internal.Message;

/** Where a value can be read from a unit. There is no address to write to: nothing here ever writes. */
public sealed interface PointAddress {

    /**
     * A bit or a number that is read by Modbus.
     *
     * @param table     which of its four tables
     * @param number    from 0 to 65535, as it stands in the request; makers who count from 1 or from 40001 mean one less
     * @param form      how its bits are to be taken
     * @param lowFirst  true if the register with the low half comes first; makers differ
     * @param swapped   true if the two bytes in each register stand the other way round
     */
    record Register(Table table, int number, NumberForm form, boolean lowFirst, boolean swapped) implements PointAddress {

        /** The last address of a table. */
        public static final int LAST = 65535;

        /**
         * Checks that there is such a register.
         *
         * @throws IllegalArgumentException if the number is out of range, or the form is not one of its table
         */
        public Register {
            boolean fits = number >= 0 && number + form.registers() - 1 <= LAST;
            if (!fits || table.bits() != (form == NumberForm.BIT)) {
                throw new IllegalArgumentException(Message.POINT_NO_REGISTER.text(table.name(), String.valueOf(number), form.name()));
            }
        }
    }

    /** The tables of Modbus. */
    enum Table {
        COIL, DISCRETE_INPUT, HOLDING_REGISTER, INPUT_REGISTER;

        /** True if it holds bits, false if it holds registers of 16 bits. */
        public boolean bits() {
            return this == COIL || this == DISCRETE_INPUT;
        }
    }

    /** How the bits of one or more registers are taken for a number. */
    enum NumberForm {
        BIT(1), UNSIGNED_16(1), SIGNED_16(1), UNSIGNED_32(2), SIGNED_32(2), FLOAT_32(2), UNSIGNED_64(4), SIGNED_64(4), FLOAT_64(4);

        private final int registers;

        NumberForm(int registers) {
            this.registers = registers;
        }

        /** How many registers, or bits, one number takes. */
        public int registers() {
            return registers;
        }
    }

    /**
     * A variable of an OPC UA server.
     *
     * @param id as OPC UA writes it, such as {@code ns=2;s=Unit.State}
     */
    record Node(String id) implements PointAddress {
        public Node {
            Objects.requireNonNull(id);
        }
    }

    /** The state that an OPC UA server tells of itself; 0 is running. */
    record ServerState() implements PointAddress {
    }
}
