package org.benchwright.language.internal.compile;

import java.math.BigDecimal;

import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.WatchMap;
import org.benchwright.engine.plan.WatchMap.Protocol;
import org.benchwright.engine.plan.WatchPoint;
import org.benchwright.model.ConditionPoint;
import org.benchwright.model.LampPoint;
import org.benchwright.model.ModePoint;
import org.benchwright.model.Numeral;
import org.benchwright.model.PointAddress;
import org.benchwright.model.PointState;
import org.benchwright.model.PointTable;
import org.benchwright.model.PointValue;
import org.benchwright.model.WatchProtocol;
import org.benchwright.model.WatchedBy;
import org.benchwright.model.WatchedPoint;

/** How a family is watched. */
final class WatchCompiler {

    private WatchCompiler() {
    }

    static WatchMap compile(WatchedBy watched) {
        return new WatchMap(watched.getProtocol() == WatchProtocol.MODBUS ? Protocol.MODBUS : Protocol.OPC_UA,
                watched.getPoints().stream().map(point -> new WatchPoint(meaning(point), address(point.getAddress()))).toList());
    }

    private static WatchPoint.Meaning meaning(WatchedPoint point) {
        if (point instanceof ModePoint mode) {
            return new WatchPoint.InMode(mode.getMode().getName(), value(mode.getValue()));
        } else if (point instanceof LampPoint lamp) {
            String index = lamp.getIndex() == null ? "" : " " + lamp.getIndex();
            return new WatchPoint.LampLit(lamp.getLamp().getName() + index, value(lamp.getValue()));
        }
        ConditionPoint condition = (ConditionPoint) point;
        Quantity scale = Amounts.quantity(condition.getScale());
        BigDecimal offset = condition.getOffset() == null ? BigDecimal.ZERO : Amounts.quantity(condition.getOffset()).exactIn(scale.unit());
        return new WatchPoint.Reads(condition.getCondition(), scale.value(), offset, scale.unit());
    }

    /** Of a bit 1 is on; of a server 0 is running. */
    private static BigDecimal value(PointValue value) {
        return value.getState() == PointState.ON ? BigDecimal.ONE : value.getState() == PointState.NUMBER ? value.getNumber() : BigDecimal.ZERO;
    }

    private static org.benchwright.core.PointAddress address(PointAddress written) {
        if (written.getTable() == PointTable.NODE) {
            return new org.benchwright.core.PointAddress.Node(written.getNode());
        } else if (written.getTable() == PointTable.SERVER) {
            return new org.benchwright.core.PointAddress.ServerState();
        }
        return new org.benchwright.core.PointAddress.Register(table(written.getTable()), written.getNumber(), form(written), written.isLowFirst(),
                written.isSwapped());
    }

    private static Table table(PointTable table) {
        return switch (table) {
            case COIL -> Table.COIL;
            case INPUT -> Table.DISCRETE_INPUT;
            case HOLDING_REGISTER -> Table.HOLDING_REGISTER;
            default -> Table.INPUT_REGISTER;
        };
    }

    private static NumberForm form(PointAddress written) {
        if (written.getNumeral() == Numeral.UNSTATED) {
            return NumberForm.BIT;
        }
        return NumberForm.valueOf(written.getNumeral().getName() + "_" + written.getBits());
    }
}
