package org.benchwright.evidence;

import java.util.Arrays;

import org.benchwright.evidence.internal.Require;

/**
 * What a bench of n stations can take when each unit soaks for a fixed time T and units arrive by chance (Poisson) with a
 * mean number a for each T: a is the offered load, a/n the part of the time that a station is busy.
 *
 * <p>Units that wait their turn: the number of units present, looked at every T, is a Markov chain in which up to n leave
 * and a Poisson number arrives (Crommelin 1932); its stationary distribution is reckoned numerically. Units that are
 * turned away when all stations are taken: Erlang's loss formula (1917), which holds for any soak of that mean length.
 *
 * @param stations n, 1 to 1000
 * @param load a = arrivals for each unit of time times T, above zero
 */
public record BenchCapacity(int stations, double load) {

    private static final int MOST_STATIONS = 1000;
    private static final double ACCURACY = 1e-13;
    private static final int MOST_ROUNDS = 200_000;
    /** Beyond this part of the time busy, queues are so long that only more stations help. */
    private static final double BUSIEST = 0.99;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is out of range
     */
    public BenchCapacity {
        if (stations < 1 || stations > MOST_STATIONS) {
            throw new IllegalArgumentException("A bench has 1 to " + MOST_STATIONS + " stations: " + stations);
        }
        Require.positive("load", load);
    }

    /**
     * A bench and what comes to it.
     *
     * @param stations n
     * @param soak T, above zero
     * @param arrivals for each unit of time in which T is given, above zero
     * @return the capacity
     * @throws IllegalArgumentException when a number is out of range
     */
    public static BenchCapacity of(int stations, double soak, double arrivals) {
        Require.positive("length of the soak", soak);
        Require.positive("arrivals", arrivals);
        return new BenchCapacity(stations, soak * arrivals);
    }

    /**
     * The part of the time that a station is busy when nobody is turned away.
     *
     * @return a/n; 1 or more means that the bench can't keep up
     */
    public double busy() {
        return load / stations;
    }

    /**
     * The most units that the stations can take.
     *
     * @param soak T, above zero
     * @return n/T, units for each unit of time
     * @throws IllegalArgumentException when T is not above zero
     */
    public double most(double soak) {
        Require.positive("length of the soak", soak);
        return stations / soak;
    }

    /**
     * The part of units turned away when none can wait: Erlang's B(n, a), by its recursion B(k) = aB(k - 1)/(k + aB(k - 1)).
     *
     * @return 0 to 1
     */
    public double turnedAway() {
        double blocked = 1;
        for (int i = 1; i <= stations; i++) {
            blocked = load * blocked / (i + load * blocked);
        }
        return blocked;
    }

    /**
     * The mean wait for a station, in soak lengths: the mean number waiting divided by the load (Little).
     *
     * @return W/T, good to about 10<sup>-9</sup>
     * @throws IllegalArgumentException when stations would be busy for more than 99 % of the time
     */
    public double meanWait() {
        if (busy() > BUSIEST) {
            throw new IllegalArgumentException("The bench can't keep up: " + Math.round(100 * busy()) + " % busy");
        }
        double[] present = stationary();
        double waiting = 0;
        for (int i = stations + 1; i < present.length; i++) {
            waiting += (i - stations) * present[i];
        }
        return waiting / load;
    }

    private double[] stationary() {
        // The tail falls as exp(-2 (1 - busy) i) or faster: so many states leave less than the accuracy outside.
        int states = stations + (int) Math.ceil(load + 20 + 40 / (1 - busy()));
        // So many more than usual never arrive within one soak: the chance is below 10^-20.
        double[] arriving = poisson(Math.min(states, (int) Math.ceil(load + 12 * Math.sqrt(load) + 40)));
        double[] present = Arrays.copyOf(arriving, states);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] next = afterOneSoak(present, arriving);
            double change = 0;
            for (int i = 0; i < states; i++) {
                change = Math.max(change, Math.abs(next[i] - present[i]));
            }
            present = next;
            if (change < ACCURACY * (1 - busy())) {
                break;
            }
        }
        return present;
    }

    private double[] afterOneSoak(double[] present, double[] arriving) {
        double[] next = new double[present.length];
        double atMost = 0;
        for (int i = 0; i <= Math.min(stations, present.length - 1); i++) {
            atMost += present[i];
        }
        for (int left = 0; left + stations < present.length || left == 0; left++) {
            double here = left == 0 ? atMost : present[left + stations];
            for (int i = left; i < Math.min(next.length, left + arriving.length); i++) {
                next[i] += here * arriving[i - left];
            }
        }
        double sum = 0;
        for (double each : next) {
            sum += each;
        }
        for (int i = 0; i < next.length; i++) {
            next[i] /= sum;
        }
        return next;
    }

    private double[] poisson(int states) {
        double[] chances = new double[states];
        double logOfFactorial = 0;
        for (int i = 0; i < states; i++) {
            logOfFactorial += i == 0 ? 0 : Math.log(i);
            chances[i] = Math.exp(i * Math.log(load) - load - logOfFactorial);
        }
        return chances;
    }
}
