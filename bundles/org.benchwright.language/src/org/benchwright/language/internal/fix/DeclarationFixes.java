package org.benchwright.language.internal.fix;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.Place;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Instrument;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.Measurement;
import org.benchwright.model.Named;
import org.benchwright.model.Parameter;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Soak;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;

/** What is declared in one place and needed in another. */
final class DeclarationFixes {

    /** More than that nobody reads through. */
    private static final int MOST = 4;

    private DeclarationFixes() {
    }

    /** Another name for the second of two; whoever refers to that name goes on meaning the first. */
    static List<Fix> otherName(Spot spot) {
        if (spot.object() instanceof CarryOut carryOut) {
            return otherInstance(spot, carryOut);
        }
        String text = spot.file().text().text();
        int number = 2;
        while (text.contains(spot.remarked() + "_" + number)) {
            number++;
        }
        return AmountFixes.by(spot, spot.remarked() + "_" + number);
    }

    /** A shared stage that is carried out twice: the second time under a name of its own. */
    private static List<Fix> otherInstance(Spot spot, CarryOut carryOut) {
        String text = spot.file().text().text();
        String shared = carryOut.getShared().getName();
        int number = 2;
        while (text.contains(shared + "_" + number)) {
            number++;
        }
        String clause = "as " + shared + "_" + number;
        return Spot.one(FixText.INSERT, clause, spot.after(Spot.node(carryOut), " " + clause));
    }

    static List<Fix> notLike(Spot spot) {
        return spot.around(Family.class).flatMap(family -> Spot.node(family, Literals.FAMILY__BASE)).map(base -> {
            int word = spot.file().text().text().lastIndexOf("like", base.getOffset());
            return Spot.one(FixText.REMOVE, "like " + Spot.text(base), spot.remove(word, base.getEndOffset()));
        }).orElse(List.of());
    }

    /** Both kinds of stop, in the family that the procedure names. */
    static List<Fix> stop(Spot spot) {
        Optional<Family> family = spot.around(Procedure.class).map(Procedure::getFamily).filter(each -> Spot.node(each) != null);
        return family.map(each -> Stream.of("stop stays until " + FixText.RESTARTED.quoted(), "stop restarts by itself")
                .map(clause -> new Fix(FixText.INSERT.text(clause), List.of(inFamily(each, clause)))).toList()).orElse(List.of());
    }

    /** Before its faults, or at its end. */
    private static Edit inFamily(Family family, String clause) {
        INode whole = Spot.node(family);
        int at = family.getFaults().isEmpty() ? whole.getRootNode().getText().lastIndexOf('}', whole.getEndOffset() - 1)
                : Spot.node(family.getFaults().get(0)).getOffset();
        Path file = Path.of(family.eResource().getURI().toFileString());
        return new Edit(new Place(file, at, 0), family.getFaults().isEmpty() ? "    " + clause + "\n" : clause + "\n    ");
    }

    /** Values that are still missing where a shared stage is carried out; nobody but the engineer knows them. */
    static List<Fix> arguments(Spot spot) {
        Optional<CarryOut> carryOut = spot.around(CarryOut.class);
        if (carryOut.isEmpty() || Spot.node(carryOut.get(), Literals.CARRY_OUT__SHARED).isEmpty()) {
            return List.of();
        }
        List<Parameter> given = carryOut.get().getArguments().stream().map(argument -> argument.getParameter()).toList();
        List<String> missing = carryOut.get().getShared().getParameters().stream()
                .filter(parameter -> parameter.getName() != null && parameter.getUnit() != null && !given.contains(parameter))
                .map(parameter -> parameter.getName() + " = 1 " + parameter.getUnit()).toList();
        String written = String.join(", ", missing);
        Edit edit = given.isEmpty() ? spot.after(Spot.node(carryOut.get(), Literals.CARRY_OUT__SHARED).get(), "(" + written + ")")
                : spot.after(Spot.node(carryOut.get().getArguments().get(given.size() - 1)), ", " + written);
        return Spot.one(FixText.ADD_ARGUMENT, written, edit);
    }

    /** Each instrument that reads; those of another dimension don't mend. */
    static List<Fix> instrument(Spot spot) {
        Optional<Measurement> measurement = spot.around(Measurement.class);
        Optional<INode> last = measurement.flatMap(each -> Spot.node(each, Literals.MEASUREMENT__UNIT)
                .or(() -> Spot.node(each, Literals.NAMED__NAME)));
        List<Instrument> declared = new ArrayList<>();
        spot.around(Procedure.class).ifPresent(procedure -> declared.addAll(procedure.getInstruments()));
        spot.around(SharedStage.class).ifPresent(shared -> declared.addAll(shared.getInstruments()));
        return last.map(node -> declared.stream().filter(each -> each.getName() != null && each.getUse() != InstrumentUse.GIVES).map(Named::getName)
                .map(name -> new Fix(FixText.INSERT.text("with " + name), List.of(spot.after(node, " with " + name)))).toList()).orElse(List.of());
    }

    /** Each mode of the family. */
    static List<Fix> keep(Spot spot) {
        Optional<Soak> soak = spot.around(Soak.class);
        Optional<Family> family = spot.around(Procedure.class).map(Procedure::getFamily).filter(each -> !each.eIsProxy());
        if (soak.isEmpty() || family.isEmpty()) {
            return List.of();
        }
        int brace = spot.file().text().text().indexOf('{', Spot.node(soak.get()).getOffset());
        String indentation = "\n" + spot.indentation(Spot.node(soak.get()).getOffset()) + "    ";
        return Families.modes(family.get()).stream().filter(mode -> !Families.indications(family.get(), mode).isEmpty()).limit(MOST)
                .map(mode -> "keep mode " + mode.getName())
                .map(clause -> new Fix(FixText.INSERT.text(clause), List.of(spot.edit(brace + 1, 0, indentation + clause)))).toList();
    }

    /** The whole of what the remark is about. */
    static List<Fix> without(Spot spot, Class<? extends EObject> kind) {
        return spot.around(kind).map(each -> Spot.one(FixText.REMOVE, Spot.text(Spot.node(each)).lines().findFirst().orElse(""),
                spot.remove(Spot.node(each)))).orElse(List.of());
    }
}
