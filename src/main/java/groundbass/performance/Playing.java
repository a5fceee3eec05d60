package groundbass.performance;

/**
 * How a line is to be played: at how many hundredths of its tempo (rule: practice-tempo), and how often from start to
 * end.
 *
 * @param percent 10 to 200
 * @param rounds 1 to 64
 */
public record Playing(int percent, int rounds) {
    public static final int SLOWEST = 10;
    public static final int FASTEST = 200;
    public static final int MOST_ROUNDS = 64;
    public static final Playing ONCE = new Playing(100, 1);

    public Playing {
        if (percent < SLOWEST || percent > FASTEST) {
            throw new IllegalArgumentException("percent out of range: " + percent);
        }
        if (rounds < 1 || rounds > MOST_ROUNDS) {
            throw new IllegalArgumentException("rounds out of range: " + rounds);
        }
    }

    public static Playing at(int percent) {
        return new Playing(percent, 1);
    }

    public Playing times(int newRounds) {
        return new Playing(percent, newRounds);
    }
}
