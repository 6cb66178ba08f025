package org.benchwright.engine.plan;

import java.math.BigDecimal;
import java.time.Duration;

/**
 * What the engineer says the soak reveals: a fault that stops the unit every {@code meanInterval} on average, with
 * {@code probability}.
 *
 * @param meanInterval mean time between two stops
 * @param probability  over 0 and under 1
 */
public record Claim(Duration meanInterval, BigDecimal probability) {
}
