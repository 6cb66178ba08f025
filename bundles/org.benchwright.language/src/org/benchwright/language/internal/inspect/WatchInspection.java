package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.PointAddress.Register;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Condition;
import org.benchwright.model.ConditionPoint;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.LampGroup;
import org.benchwright.model.LampIndication;
import org.benchwright.model.LampPoint;
import org.benchwright.model.LightPattern;
import org.benchwright.model.Mode;
import org.benchwright.model.ModeIndication;
import org.benchwright.model.ModePoint;
import org.benchwright.model.Numeral;
import org.benchwright.model.PointAddress;
import org.benchwright.model.PointState;
import org.benchwright.model.PointTable;
import org.benchwright.model.PointValue;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Soak;
import org.benchwright.model.WatchProtocol;
import org.benchwright.model.WatchedBy;
import org.benchwright.model.WatchedPoint;

/** What a watch reads can be read, means one thing, and tells what a soak asks. */
final class WatchInspection implements Inspection {

    /** A namespace and a number, a text, a GUID or bytes (OPC UA part 6, section 5.3.1.10). */
    private static final Pattern NODE_ID = Pattern.compile("(ns=(?<namespace>\\d{1,5});)?"
            + "(i=(?<number>\\d{1,10})|s=.+|g=\\p{XDigit}{8}(-\\p{XDigit}{4}){3}-\\p{XDigit}{12}|b=[A-Za-z0-9+/]+={0,2})");
    private static final long LARGEST_NAMESPACE = 65_535;
    private static final long LARGEST_NUMBER = 4_294_967_295L;
    private static final int BITS_OF_A_REGISTER = 16;

    @Override
    public void family(Family family, Remarks remarks) {
        WatchedBy watched = family.getWatched();
        if (watched == null) {
            return;
        }
        List<WatchedPoint> before = new ArrayList<>();
        for (WatchedPoint point : watched.getPoints()) {
            if (point.getAddress() != null) {
                address(point, watched, remarks);
                overlap(point, before, remarks);
            }
            twice(point, before, remarks);
            ambiguous(point, watched.getPoints(), remarks);
            point(point, remarks);
            before.add(point);
        }
    }

    // ---- where it is read

    private static void address(WatchedPoint point, WatchedBy watched, Remarks remarks) {
        PointAddress address = point.getAddress();
        boolean modbus = isRegister(address) || isBit(address);
        if (modbus != (watched.getProtocol() == WatchProtocol.MODBUS)) {
            remarks.on(address, RemarkCode.POINT_OTHER_PROTOCOL, word(address), watched.getProtocol().getLiteral());
        } else if (isRegister(address)) {
            boolean fits = Set.of(16, 32, 64).contains(address.getBits())
                    && !(address.getNumeral() == Numeral.FLOAT && address.getBits() == BITS_OF_A_REGISTER);
            if (!fits) {
                remarks.on(address, Literals.POINT_ADDRESS__BITS, RemarkCode.POINT_BITS, address.getNumeral().getLiteral(),
                        address.getNumeral() == Numeral.FLOAT ? "32 or 64" : "16, 32 or 64", Integer.toString(address.getBits()));
            }
        }
        if (isRegister(address) && address.isLowFirst() && length(address) == 1) {
            remarks.on(address, RemarkCode.POINT_ORDER);
        }
        if (modbus && address.getNumber() + length(address) - 1L > Register.LAST) {
            remarks.on(address, Literals.POINT_ADDRESS__NUMBER, RemarkCode.POINT_ADDRESS, Integer.toString(isBit(address) ? 1 : address.getBits()),
                    Long.toString(length(address)));
        }
        if (address.getTable() == PointTable.NODE && address.getNode() != null && !isNodeId(address.getNode())) {
            remarks.on(address, Literals.POINT_ADDRESS__NODE, RemarkCode.POINT_NODE, address.getNode());
        }
    }

    private static boolean isNodeId(String written) {
        Matcher parts = NODE_ID.matcher(written);
        return parts.matches() && isUpTo(LARGEST_NAMESPACE, parts.group("namespace")) && isUpTo(LARGEST_NUMBER, parts.group("number"));
    }

    private static boolean isUpTo(long largest, String digits) {
        return digits == null || Long.parseLong(digits) <= largest;
    }

    private static boolean isRegister(PointAddress address) {
        return address.getTable() == PointTable.HOLDING_REGISTER || address.getTable() == PointTable.INPUT_REGISTER;
    }

    private static boolean isBit(PointAddress address) {
        return address.getTable() == PointTable.COIL || address.getTable() == PointTable.INPUT;
    }

    private static String word(PointAddress address) {
        return address.getTable().getName().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static long length(PointAddress address) {
        return isRegister(address) ? Math.max(1, address.getBits() / BITS_OF_A_REGISTER) : 1;
    }

    private static void overlap(WatchedPoint point, List<WatchedPoint> before, Remarks remarks) {
        PointAddress own = point.getAddress();
        for (WatchedPoint other : before) {
            PointAddress its = other.getAddress();
            if (its == null || !isRegister(own) || own.getTable() != its.getTable()) {
                continue;
            }
            boolean apart = own.getNumber() + length(own) <= its.getNumber() || its.getNumber() + length(its) <= own.getNumber();
            boolean same = own.getNumber() == its.getNumber() && own.getNumeral() == its.getNumeral() && own.getBits() == its.getBits()
                    && own.isLowFirst() == its.isLowFirst() && own.isSwapped() == its.isSwapped();
            if (!apart && !same) {
                remarks.on(own, RemarkCode.POINTS_OVERLAP, name(other));
                return;
            }
        }
    }

    // ---- what it means

    private static String name(WatchedPoint point) {
        if (point instanceof ModePoint mode) {
            return Written.thing(mode.getMode()).map(Mode::getName).orElse("");
        } else if (point instanceof LampPoint lamp) {
            return Written.thing(lamp.getLamp()).map(each -> each.getName()).orElse("") + (lamp.getIndex() == null ? "" : " " + lamp.getIndex());
        }
        return String.valueOf(((ConditionPoint) point).getCondition());
    }

    /** A lamp or a condition is read in one place; a mode may be told by several points, which then all have to hold. */
    private static void twice(WatchedPoint point, List<WatchedPoint> before, Remarks remarks) {
        boolean again = before.stream().anyMatch(other -> other.eClass() == point.eClass() && name(other).equals(name(point))
                && (!(point instanceof ModePoint) || samePlace(point.getAddress(), other.getAddress())));
        if (again) {
            remarks.on(point, RemarkCode.POINT_TWICE, name(point));
        }
    }

    /** Where modes have one point each, these have to tell them apart; several have to hold together, and may share some. */
    private static void ambiguous(WatchedPoint point, List<WatchedPoint> all, Remarks remarks) {
        if (point instanceof ModePoint mode && alone(mode, all)) {
            all.subList(0, all.indexOf(point)).stream().filter(ModePoint.class::isInstance).map(ModePoint.class::cast)
                    .filter(other -> !name(other).equals(name(point)) && alone(other, all) && samePlace(point.getAddress(), other.getAddress())
                            && sameValue(mode.getValue(), other.getValue()))
                    .findFirst().ifPresent(other -> remarks.on(point, RemarkCode.POINT_AMBIGUOUS, name(other)));
        }
    }

    private static boolean alone(ModePoint mode, List<WatchedPoint> all) {
        return all.stream().filter(other -> other instanceof ModePoint && name(other).equals(name(mode))).count() == 1;
    }

    private static boolean sameValue(PointValue one, PointValue other) {
        boolean same = one != null && other != null && one.getState() == other.getState();
        return same && (one.getState() != PointState.NUMBER || one.getNumber() != null && other.getNumber() != null
                && one.getNumber().compareTo(other.getNumber()) == 0);
    }

    private static boolean samePlace(PointAddress one, PointAddress other) {
        return one != null && other != null && one.getTable() == other.getTable() && one.getNumber() == other.getNumber()
                && Objects.equals(one.getNode(), other.getNode());
    }

    private static void point(WatchedPoint point, Remarks remarks) {
        if (point instanceof ModePoint mode) {
            value(mode.getAddress(), mode.getValue(), remarks);
        } else if (point instanceof LampPoint lamp) {
            value(lamp.getAddress(), lamp.getValue(), remarks);
            lamp(lamp, remarks);
        } else if (point instanceof ConditionPoint condition) {
            scale(condition, remarks);
        }
    }

    private static void lamp(LampPoint point, Remarks remarks) {
        Written.thing(point.getLamp()).ifPresent(lamp -> {
            boolean group = lamp instanceof LampGroup;
            Integer index = point.getIndex();
            boolean fits = group ? index != null && index >= ((LampGroup) lamp).getFirst() && index <= ((LampGroup) lamp).getLast() : index == null;
            if (!fits) {
                remarks.on(point, Literals.LAMP_POINT__LAMP, RemarkCode.NO_SUCH_LAMP_IN_GROUP, lamp.getName(), String.valueOf(index));
            }
        });
    }

    private static void value(PointAddress address, PointValue value, Remarks remarks) {
        if (address == null || value == null) {
            return;
        }
        PointState state = value.getState();
        boolean onOff = state == PointState.ON || state == PointState.OFF;
        boolean fits = switch (address.getTable()) {
            case COIL, INPUT -> onOff;
            case HOLDING_REGISTER, INPUT_REGISTER -> state == PointState.NUMBER && inRange(address, value.getNumber());
            case NODE -> state != PointState.RUNNING;
            case SERVER -> state == PointState.RUNNING || state == PointState.NUMBER;
        };
        if (!fits) {
            remarks.on(value, RemarkCode.POINT_VALUE, word(address), switch (address.getTable()) {
                case COIL, INPUT -> "on, off";
                case HOLDING_REGISTER, INPUT_REGISTER -> range(address);
                case NODE -> "on, off, 3";
                case SERVER -> "running";
            });
        }
    }

    private static boolean inRange(PointAddress address, BigDecimal number) {
        if (number == null || address.getNumeral() == Numeral.FLOAT) {
            return number != null;
        }
        boolean whole = number.stripTrailingZeros().scale() <= 0;
        return whole && number.compareTo(least(address)) >= 0 && number.compareTo(most(address)) <= 0;
    }

    private static BigDecimal least(PointAddress address) {
        return address.getNumeral() == Numeral.SIGNED ? power(address.getBits() - 1).negate() : BigDecimal.ZERO;
    }

    private static BigDecimal most(PointAddress address) {
        return power(address.getNumeral() == Numeral.SIGNED ? address.getBits() - 1 : address.getBits()).subtract(BigDecimal.ONE);
    }

    private static BigDecimal power(int bits) {
        return BigDecimal.valueOf(2).pow(Math.max(0, Math.min(bits, 64)));
    }

    private static String range(PointAddress address) {
        return address.getNumeral() == Numeral.FLOAT ? "2.5" : least(address).toPlainString() + " .. " + most(address).toPlainString();
    }

    private static void scale(ConditionPoint point, Remarks remarks) {
        Amount scale = point.getScale();
        Optional<UnitOfMeasure> unit = scale == null ? Optional.empty() : Written.unit(scale.getUnit());
        if (point.getAddress() != null && (isBit(point.getAddress()) || point.getAddress().getTable() == PointTable.SERVER)) {
            remarks.on(point.getAddress(), RemarkCode.POINT_SCALE, word(point.getAddress()));
        } else if (scale != null && scale.getValue() != null && scale.getValue().signum() == 0) {
            remarks.on(scale, RemarkCode.POINT_SCALE, "0");
        }
        Optional<UnitOfMeasure> offset = Optional.ofNullable(point.getOffset()).flatMap(each -> Written.unit(each.getUnit()));
        if (unit.isPresent() && offset.isPresent() && !unit.get().sameDimension(offset.get())) {
            remarks.on(point.getOffset(), RemarkCode.WRONG_DIMENSION, point.getOffset().getUnit(), scale.getUnit());
        }
    }

    // ---- what a soak asks

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        Optional<Family> family = Written.thing(procedure.getFamily());
        if (family.isEmpty()) {
            return;
        }
        Optional<WatchedBy> watched = Families.watched(family.get());
        procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast).filter(soak -> soak.getWatch() != null)
                .forEach(soak -> soak(soak, family.get(), watched, remarks));
    }

    private static void soak(Soak soak, Family family, Optional<WatchedBy> watched, Remarks remarks) {
        List<WatchedPoint> points = watched.map(each -> List.copyOf(each.getPoints())).orElse(List.of());
        Set<String> told = new HashSet<>();
        soak.getKeeps().forEach(kept -> tellers(kept, family, told));
        boolean resolved = soak.getKeeps().stream().noneMatch(WatchInspection::leadsNowhere);
        if (!soak.getKeeps().isEmpty() && resolved && points.stream()
                .noneMatch(point -> !(point instanceof ConditionPoint) && told.contains(point.eClass().getName() + name(point)))) {
            remarks.on(soak.getWatch(), RemarkCode.WATCH_CANNOT_TELL, String.valueOf(family.getName()));
        }
        for (WatchedPoint point : points) {
            if (point instanceof ConditionPoint read) {
                soak.getConditions().stream().filter(condition -> Objects.equals(condition.getName(), read.getCondition()))
                        .forEach(condition -> dimension(condition, read, remarks));
            }
        }
    }

    /** The names of all modes and lamps that could tell it. A lamp that flashes can't be told by samples. */
    private static void tellers(Indication kept, Family family, Set<String> told) {
        if (kept instanceof ModeIndication mode) {
            Written.thing(mode.getMode()).ifPresent(each -> {
                if (told.add(Literals.MODE_POINT.getName() + each.getName())) {
                    Families.indications(family, each).forEach(shown -> tellers(shown, family, told));
                }
            });
        } else if (kept instanceof LampIndication lamp && lamp.getStates().stream().noneMatch(s -> s.getPattern() == LightPattern.FLASHING)) {
            // Lit says nothing about which colour.
            Written.thing(lamp.getLamp()).filter(each -> each.getColours().size() < 2)
                    .ifPresent(each -> told.add(Literals.LAMP_POINT.getName() + each.getName()
                    + (lamp.getIndex() == null ? "" : " " + lamp.getIndex())));
        }
        // No point reads a display.
    }

    private static boolean leadsNowhere(Indication kept) {
        return kept instanceof ModeIndication mode && Written.thing(mode.getMode()).isEmpty()
                || kept instanceof LampIndication lamp && Written.thing(lamp.getLamp()).isEmpty();
    }

    private static void dimension(Condition condition, ConditionPoint read, Remarks remarks) {
        Optional<UnitOfMeasure> wanted = Optional.ofNullable(condition.getLimits()).flatMap(limits -> Written.unit(limits.getUnit()));
        Optional<UnitOfMeasure> has = Optional.ofNullable(read.getScale()).flatMap(scale -> Written.unit(scale.getUnit()));
        if (wanted.isPresent() && has.isPresent() && !wanted.get().sameDimension(has.get())) {
            remarks.on(condition, RemarkCode.WRONG_DIMENSION, condition.getLimits().getUnit(), read.getScale().getUnit());
        }
    }
}
