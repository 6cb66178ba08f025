package org.benchwright.language.internal.editing;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

import org.benchwright.model.CarryOut;
import org.benchwright.model.Family;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.SharedStage;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * The names by which a file hangs together with others, in lower case: two that differ by case only are remarked on in both files.
 *
 * @param offered families, procedures and shared stages that it declares
 * @param wanted  families, procedures and shared stages that it refers to, whether or not they are anywhere
 */
record FileNames(Set<String> offered, Set<String> wanted) {

    static FileNames of(ProcedureFile file) {
        Set<String> offered = new HashSet<>();
        Set<String> wanted = new HashSet<>();
        for (Family family : file.getFamilies()) {
            offer(family, offered);
            want(family, Literals.FAMILY__BASE, wanted);
        }
        for (Procedure procedure : file.getProcedures()) {
            offer(procedure, offered);
            want(procedure, Literals.PROCEDURE__FAMILY, wanted);
            procedure.getBlocks().stream().filter(CarryOut.class::isInstance)
                    .forEach(carryOut -> want(carryOut, Literals.CARRY_OUT__SHARED, wanted));
            if (procedure.getRetest() != null) {
                want(procedure.getRetest(), Literals.RETEST__PROCEDURE, wanted);
            }
        }
        for (SharedStage shared : file.getSharedStages()) {
            offer(shared, offered);
            want(shared, Literals.SHARED_STAGE__FAMILY, wanted);
        }
        return new FileNames(offered, wanted);
    }

    private static void offer(Named named, Set<String> offered) {
        if (named.getName() != null) {
            offered.add(named.getName().toLowerCase(Locale.ROOT));
        }
    }

    private static void want(EObject holder, EReference reference, Set<String> wanted) {
        NodeModelUtils.findNodesForFeature(holder, reference)
                .forEach(node -> wanted.add(NodeModelUtils.getTokenText(node).toLowerCase(Locale.ROOT)));
    }

    /** Whether something about one of the names concerns this file. */
    boolean concerns(Set<String> touched) {
        return touched.stream().anyMatch(name -> offered.contains(name) || wanted.contains(name));
    }
}
