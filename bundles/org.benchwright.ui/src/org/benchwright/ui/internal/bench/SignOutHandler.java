package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Whoever has signed in goes, and the station is open to everybody. A locked one stays locked: it would be a way past the lock. */
public final class SignOutHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Desk desk = Cards.window(event).getService(Desk.class);
        if (!desk.station().locked()) {
            desk.station().signOut();
            desk.stationChanged();
        }
        return null;
    }
}
