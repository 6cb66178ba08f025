package org.benchwright.ledger;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * Files that are either whole or not there, also after a power cut: written beside their place, forced to the disk, then renamed.
 */
public final class DurableFiles {

    private static final Set<PosixFilePermission> OWNER = EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

    private DurableFiles() {
    }

    /** Puts {@code content} at {@code file}, in place of what was there; durable when this returns. */
    public static void write(Path file, byte[] content) throws IOException {
        write(file, content, false);
    }

    /** As {@link #write(Path, byte[])}, and nobody but the owner can read or change the file at any time. */
    public static void writePrivate(Path file, byte[] content) throws IOException {
        write(file, content, true);
    }

    private static void write(Path file, byte[] content, boolean ownerOnly) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Path beside = folder.resolve(file.getFileName() + "." + UUID.randomUUID() + ".tmp");
        try {
            writeForced(beside, content, ownerOnly);
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
        syncFolder(folder);
    }

    private static void writeForced(Path file, byte[] content, boolean ownerOnly) throws IOException {
        boolean posix = isPosix(file);
        FileAttribute<?>[] attributes = ownerOnly && posix ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWNER)}
                : new FileAttribute<?>[0];
        try (FileChannel channel = FileChannel.open(file, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), attributes)) {
            if (ownerOnly && !posix) {
                restrictToOwner(file);
            }
            ByteBuffer bytes = ByteBuffer.wrap(content);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
    }

    private static void restrictToOwner(Path file) throws IOException {
        AclFileAttributeView view = Files.getFileAttributeView(file, AclFileAttributeView.class);
        if (view == null) {
            throw new IOException("this file system can't keep a file private: " + file);
        }
        view.setAcl(List.of(AclEntry.newBuilder().setType(AclEntryType.ALLOW).setPrincipal(view.getOwner())
                .setPermissions(EnumSet.allOf(AclEntryPermission.class)).build()));
    }

    /** Forces the names in {@code folder} to the disk. Windows keeps them by itself and has no such call. */
    public static void syncFolder(Path folder) throws IOException {
        if (!isPosix(folder)) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static boolean isPosix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }
}
