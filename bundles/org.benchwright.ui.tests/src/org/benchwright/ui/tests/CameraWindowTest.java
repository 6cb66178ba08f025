package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.house.CameraFolder;
import org.benchwright.workshop.tests.SamplePhoto;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Photos reach the step that asks for one: from the camera's folder, and dropped on the card. */
@ExtendWith(QuietLog.class)
class CameraWindowTest {

    @Test
    void aNewPictureInTheCameraFolderIsOfferedToTheStepThatAsksForOne(@TempDir Path folder) throws Exception {
        CameraFolder camera = PlatformUI.getWorkbench().getService(CameraFolder.class);
        camera.watch(folder);
        try {
            OpenTest test = Technician.open(Technician.C16, "C16-410009", true);
            Technician.answerUntil(test, Answers.of("accepted"), "plate.photo");
            Files.writeString(folder.resolve("notes.txt"), "no picture");
            Files.write(folder.resolve("IMG_0042.JPG"), SamplePhoto.of("a photo"));
            Screen.waitFor("the picture", () -> Screen.entryFields().get(0).getText().endsWith("IMG_0042.JPG"));
            assertTrue(Screen.all(Label.class).anyMatch(label -> label.getText().equals("New picture IMG_0042.JPG: Enter attaches it.")));
            Shown before = Technician.seen(test);
            Technician.key(test, SWT.CR, '\r');
            Technician.after(test, before);
            assertTrue(test.shown().soFar().toString().contains("IMG_0042.JPG"));
        } finally {
            camera.close();
        }
    }

    /** A camera is unplugged and plugged in again, and its folder with it. */
    @Test
    void aCameraFolderThatComesBackIsWatchedAgain(@TempDir Path folder) throws Exception {
        Path pictures = Files.createDirectory(folder.resolve("pictures"));
        Queue<Path> told = new ConcurrentLinkedQueue<>();
        try (CameraFolder camera = new CameraFolder()) {
            camera.add(told::add);
            camera.watch(pictures);
            Files.delete(pictures);
            Files.createDirectory(pictures);
            AtomicInteger taken = new AtomicInteger();
            Screen.waitFor("a picture that was taken since", () -> {
                if (taken.getAndIncrement() % 20 == 0) {
                    take(pictures.resolve("IMG_" + taken + ".JPG"));
                }
                return !told.isEmpty();
            });
        }
    }

    /** The system keeps some hundred events; of what comes on top of them it says only that it was too much. */
    @Test
    void aPictureAmongMoreFilesThanTheSystemCountsIsToldAllTheSame(@TempDir Path folder) throws Exception {
        Path before = folder.resolve("IMG_0001.JPG");
        take(before);
        Queue<Path> told = new ConcurrentLinkedQueue<>();
        CountDownLatch written = new CountDownLatch(1);
        try (CameraFolder camera = new CameraFolder()) {
            camera.add(picture -> {
                told.add(picture);
                awaitLatch(written);
            });
            camera.watch(folder);
            take(folder.resolve("IMG_0002.JPG"));
            Screen.waitFor("the first", () -> told.size() == 1);
            take(folder.resolve("IMG_0003.JPG"));
            for (int i = 0; i < 2000; i++) {
                Files.createFile(folder.resolve("thumbnail" + i));
            }
            written.countDown();
            Screen.waitFor("the second", () -> told.contains(folder.resolve("IMG_0003.JPG")));
            assertFalse(told.contains(before), "what was there before is nothing new");
        }
    }

    private static void awaitLatch(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException over) {
            Thread.currentThread().interrupt();
        }
    }

    private static void take(Path picture) {
        try {
            Files.write(picture, SamplePhoto.of("a photo"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void aPictureDroppedOnTheStepThatAsksForOneIsOfferedAndOneThatAsksForNoneSaysSo(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), Auditor.PROCEDURE.replace("{ confirm", "{ attach photo \"Front\" confirm"));
        Path photo = Files.write(folder.resolve("front.jpg"), SamplePhoto.of("a photo"));
        OpenTest test = Technician.open(file.toString(), "F-410022", true);
        Shown asked = Technician.seen(test);
        assertEquals("look.photo", asked.key());
        Drops.on(Screen.card(), photo);
        assertEquals(photo.toString(), Screen.entryFields().get(0).getText());
        Technician.key(test, SWT.CR, '\r');
        Technician.after(test, asked);
        assertTrue(test.shown().soFar().toString().contains("front.jpg"));
        Drops.on(Screen.card(), photo);
        assertEquals("", Screen.entryFields().get(0).getText());
        assertTrue(Screen.all(Label.class).anyMatch(label -> label.getText().equals("This step asks for no file; front.jpg is not taken.")));
    }
}
