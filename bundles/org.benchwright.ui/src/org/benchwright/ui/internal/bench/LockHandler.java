package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Locks the station. */
public final class LockHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Desk desk = Cards.window(event).getService(Desk.class);
        desk.station().lock();
        desk.stationChanged();
        return null;
    }
}
