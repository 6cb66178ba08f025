package org.benchwright.language.internal.expand;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.model.Block;
import org.benchwright.model.CarryOut;
import org.benchwright.model.GoTo;
import org.benchwright.model.Procedure;
import org.benchwright.model.Stage;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;

/** Puts shared stages in the places where a procedure carries them out, so that whatever looks at the procedure sees plain stages. */
public final class Expansion {

    private final Procedure copy;
    private final Map<EObject, EObject> origins = new IdentityHashMap<>();
    private final Map<EObject, CarryOut> places = new IdentityHashMap<>();

    private Expansion(Procedure written) {
        EcoreUtil.Copier copier = new EcoreUtil.Copier();
        copy = (Procedure) copier.copy(written);
        copier.copyReferences();
        copier.forEach((from, to) -> origins.put(to, from));
    }

    /**
     * Expands a procedure.
     *
     * @param written as written; names that lead nowhere are left as they are
     * @return the procedure with its shared stages
     */
    public static Expanded of(Procedure written) {
        if (written.getBlocks().stream().noneMatch(Expansion::isKnown)) {
            return Expanded.asWritten(written);
        }
        Expansion expansion = new Expansion(written);
        List.copyOf(expansion.copy.getBlocks()).stream().filter(Expansion::isKnown).map(CarryOut.class::cast).forEach(expansion::expand);
        return new Expanded(expansion.copy, expansion.origins, expansion.places);
    }

    /** One that leads nowhere stands for a stage that nobody knows; that is remarked on by its name. */
    private static boolean isKnown(Block block) {
        return block instanceof CarryOut carryOut && carryOut.getShared() != null && !carryOut.getShared().eIsProxy();
    }

    private void expand(CarryOut carryOut) {
        List<Block> blocks = copy.getBlocks();
        int at = blocks.indexOf(carryOut);
        CarryOut written = (CarryOut) origins.get(carryOut);
        Instance instance = new Instance(carryOut, copy);
        Stage stage = instance.stage();
        instance.origins().forEach((to, from) -> {
            origins.put(to, from);
            places.put(to, written);
        });
        origins.put(stage, written);
        blocks.set(at, stage);
        copy.eAllContents().forEachRemaining(each -> {
            if (each instanceof GoTo goTo && goTo.getTarget() == carryOut) {
                goTo.setTarget(stage);
            }
        });
    }
}
