package org.benchwright.ui.internal.audit;

/** Nonconformities: units that do not conform. */
public final class NonconformitiesView extends DeviationsView {

    /** The view of nonconformities. */
    public NonconformitiesView() {
        super(true);
    }
}
