package org.benchwright.language.internal.compile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.core.Limits;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.plan.FaultNote;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.model.Family;
import org.benchwright.model.Fault;
import org.benchwright.model.LampGroup;
import org.benchwright.model.Named;
import org.benchwright.model.StopKind;

/** A family with everything that it has from the families it is like; its own word counts over theirs. */
final class FamilyCompiler {

    private final List<Family> line;

    FamilyCompiler(Family family) {
        List<Family> fromBase = new ArrayList<>();
        for (Family f = family; f != null && !fromBase.contains(f); f = f.getBase()) {
            fromBase.add(0, f);
        }
        line = List.copyOf(fromBase);
    }

    UnitFamily compile() {
        Family own = line.get(line.size() - 1);
        Signals signals = new Signals(this);
        List<Lamp> lamps = all(Family::getLamps).stream().flatMap(l -> lamps(l).stream()).toList();
        List<Mode> modes = all(Family::getModes).stream().map(m -> new Mode(m.getName(), signals.ofMode(m).shows())).toList();
        List<FaultNote> faults = all(Family::getFaults).stream().map(f -> fault(f, signals)).toList();
        boolean stopStays = last(Family::getStop).filter(s -> s.getKind() == StopKind.STAYS).isPresent();
        return new UnitFamily(own.getName(), own.getLabel(), supply(), last(Family::getSerial).map(SerialMask::new), lamps, modes, faults,
                stopStays);
    }

    /** All elements of a kind along the line, an own one in the place of an inherited one of that name. */
    private <T extends Named> Collection<T> all(Function<Family, ? extends Collection<T>> kind) {
        Map<String, T> byName = new LinkedHashMap<>();
        line.forEach(family -> kind.apply(family).forEach(element -> byName.put(element.getName(), element)));
        return byName.values();
    }

    /** The nearest statement of a kind. */
    private <T> Optional<T> last(Function<Family, T> kind) {
        return line.stream().map(kind).filter(value -> value != null).reduce((inherited, own) -> own);
    }

    private Optional<Limits> supply() {
        return last(Family::getSupply).filter(s -> s.getTolerance() != null)
                .map(s -> Amounts.around(Amounts.quantity(s.getNominal()), s.getTolerance()));
    }

    /** What shows a mode: as the nearest family says. */
    List<org.benchwright.model.Indication> shownBy(org.benchwright.model.Mode mode) {
        return line.stream().flatMap(f -> f.getModeIndications().stream()).filter(s -> s.getMode() == mode)
                .reduce((inherited, own) -> own).<List<org.benchwright.model.Indication>>map(s -> s.getIndications()).orElse(List.of());
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
