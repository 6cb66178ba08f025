package org.benchwright.language.internal.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.plan.FaultNote;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.model.CurrentKind;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Fault;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.LampGroup;
import org.benchwright.model.StopBehaviour;
import org.benchwright.model.StopKind;
import org.benchwright.model.SupplyRating;

/** A family with everything that it has from the families it is like. */
final class FamilyCompiler {

    private FamilyCompiler() {
    }

    static UnitFamily compile(Family family) {
        Signals signals = new Signals(family);
        List<Lamp> lamps = Families.lamps(family).stream().flatMap(l -> lamps(l).stream()).toList();
        List<Mode> modes = Families.modes(family).stream()
                .map(m -> new Mode(m.getName(), signals.ofMode(m).shows(), Optional.ofNullable(m.getLabel()))).toList();
        List<FaultNote> faults = Families.faults(family).stream().map(f -> fault(f, signals)).toList();
        Optional<Limits> supply = Families.supply(family).filter(s -> s.getTolerance() != null)
                .map(s -> Amounts.around(Amounts.quantity(s.getNominal()), s.getTolerance()));
        boolean stopStays = Families.stop(family).filter(s -> s.getKind() == StopKind.STAYS).isPresent();
        return new UnitFamily(family.getName(), family.getLabel(), supply, Families.serialMask(family).map(SerialMask::new), lamps, modes,
                faults, stopStays, Families.supply(family).map(FamilyCompiler::words),
                Families.stop(family).map(StopBehaviour::getUntil), Families.watched(family).map(WatchCompiler::compile));
    }

    /** Such as {@code 24 V dc}. */
    private static String words(SupplyRating supply) {
        return Amounts.quantity(supply.getNominal()) + current(supply.getCurrent());
    }

    /** Such as {@code reads V dc}. */
    static String words(InstrumentUse use, String unit, CurrentKind current) {
        return use.getName().toLowerCase(Locale.ROOT) + " " + unit + current(current);
    }

    private static String current(CurrentKind kind) {
        return kind == CurrentKind.UNSTATED ? "" : " " + kind.getName().toLowerCase(Locale.ROOT);
    }

    static String marking(org.benchwright.model.Lamp lamp) {
        return lamp.getMarking() == null ? lamp.getName() : lamp.getMarking();
    }

    private static List<Lamp> lamps(org.benchwright.model.Lamp lamp) {
        if (!(lamp instanceof LampGroup group)) {
            return List.of(new Lamp(lamp.getName(), marking(lamp), lamp.getColours(), lamp.getLabel()));
        }
        List<Lamp> spelledOut = new ArrayList<>();
        for (int i = group.getFirst(); i <= group.getLast(); i++) {
            spelledOut.add(new Lamp(lamp.getName() + " " + i, marking(lamp) + " " + i, lamp.getColours(), lamp.getLabel() + " " + i));
        }
        return spelledOut;
    }

    private static FaultNote fault(Fault f, Signals signals) {
        return new FaultNote(f.getName(), f.getLabel(), f.getIndications().stream().map(signals::still).toList(), text(f.getMeans()),
                text(f.getOften()), text(f.getNext()));
    }

    static String text(String written) {
        return written == null ? "" : written;
    }
}
