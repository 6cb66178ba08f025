package org.benchwright.language.internal.server;

import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.services.WorkspaceService;

/** What the editor tells about files outside itself. */
record FileEvents(Desk desk) implements WorkspaceService {

    @Override
    public void didChangeConfiguration(DidChangeConfigurationParams parameters) {
        // There is nothing to configure.
    }

    @Override
    public void didChangeWatchedFiles(DidChangeWatchedFilesParams parameters) {
        desk.lookAtDisk();
    }
}
