package org.benchwright.ui.internal.audit;

/** Departures: where the work departed from a procedure. */
public final class DeparturesView extends DeviationsView {

    /** The view of departures. */
    public DeparturesView() {
        super(false);
    }
}
