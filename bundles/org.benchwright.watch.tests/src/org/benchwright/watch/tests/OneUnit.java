package org.benchwright.watch.tests;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

import org.benchwright.core.PointAddress;
import org.benchwright.core.Quantity;
import org.benchwright.watch.Judge;
import org.benchwright.watch.Judgement;
import org.benchwright.watch.PointValues;

/** A unit that is as it must be while its first point reads 1; its second point, where it has one, is the supply in tenths of a volt. */
record OneUnit(List<PointAddress> points) implements Judge {

    @Override
    public Judgement judge(PointValues values) {
        boolean good = values.values().get(points.get(0)).signum() != 0;
        Map<String, Quantity> read = points.size() < 2 ? Map.of()
                : Map.of("supply", Quantity.of(values.values().get(points.get(1)).movePointLeft(1).toPlainString(), "V"));
        return new Judgement(good, good ? "run" : "not run", read);
    }

    @Override
    public boolean inside(String condition, Quantity value) {
        return value.compareTo(Quantity.of("23.5", "V")) >= 0 && value.compareTo(Quantity.of("24.5", "V")) <= 0;
    }

    @Override
    public PointValues simulated(boolean good) {
        return new PointValues(Map.of(points.get(0), good ? BigDecimal.ONE : BigDecimal.ZERO));
    }
}
