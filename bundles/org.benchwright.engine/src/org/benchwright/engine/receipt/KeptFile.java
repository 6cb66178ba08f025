package org.benchwright.engine.receipt;

import org.benchwright.core.Digest;

/**
 * A file that is kept with what was said, such as a photo.
 *
 * @param digest of its content, which the ledger keeps
 * @param name   its name without a folder
 */
public record KeptFile(Digest digest, String name) {
}
