package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.benchwright.ledger.tests.MutationCampaign.Fate;
import org.benchwright.ledger.tests.MutationCampaign.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A few hundred random changes in every run; {@code releng/campaign} asks for more by the system properties
 * {@code benchwright.campaign.seed}, {@code .count} and {@code .report}.
 */
class MutationCampaignTest {

    private static final int WORKERS = 2;

    @TempDir
    Path folder;

    @Test
    void everyRandomChangeIsFoundOrHasNoEffectAndNoneMakesTheVerifierFail() throws Exception {
        long seed = Long.getLong("benchwright.campaign.seed", 20260302L);
        int count = Integer.getInteger("benchwright.campaign.count", 240);
        Map<Fate, Integer> fates = new EnumMap<>(Fate.class);
        List<String> misses = new ArrayList<>();
        for (Outcome outcome : outcomes(seed, count)) {
            outcome.fates().forEach((fate, number) -> fates.merge(fate, number, Integer::sum));
            misses.addAll(outcome.misses());
        }
        String report = "seed " + seed + ", " + count + " changes: " + fates;
        String file = System.getProperty("benchwright.campaign.report", "");
        if (!file.isEmpty()) {
            Files.writeString(Path.of(file), report + "\n" + String.join("\n", misses) + "\n");
        }
        assertEquals(List.of(), misses, report);
        assertEquals(count, fates.values().stream().mapToInt(Integer::intValue).sum());
        assertTrue(fates.getOrDefault(Fate.FOUND, 0) > count / 2, report);
    }

    private List<Outcome> outcomes(long seed, int count) throws Exception {
        ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
        try {
            List<Callable<Outcome>> parts = new ArrayList<>();
            for (int worker = 0; worker < WORKERS; worker++) {
                MutationCampaign campaign = MutationCampaign.in(Files.createDirectory(folder.resolve("worker" + worker)));
                long own = seed * WORKERS + worker;
                int share = count / WORKERS + (worker < count % WORKERS ? 1 : 0);
                parts.add(() -> campaign.run(own, share));
            }
            List<Outcome> outcomes = new ArrayList<>();
            for (Future<Outcome> part : workers.invokeAll(parts)) {
                outcomes.add(part.get());
            }
            return outcomes;
        } finally {
            workers.shutdownNow();
        }
    }
}
