package groundbass.theory;

/** Published profiles: how well each pitch class fits a major or minor key, tonic first. */
public enum KeyProfile {
    /** Krumhansl and Kessler 1982, as in Krumhansl, Cognitive Foundations of Musical Pitch, 1990. */
    KRUMHANSL_KESSLER(
            new double[] {6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88},
            new double[] {6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17}),
    /** Temperley, The Cognition of Basic Musical Structures, 2001: set by hand. */
    TEMPERLEY(
            new double[] {5.0, 2.0, 3.5, 2.0, 4.5, 4.0, 2.0, 4.5, 2.0, 3.5, 1.5, 4.0},
            new double[] {5.0, 2.0, 3.5, 4.5, 2.0, 4.0, 2.0, 4.5, 3.5, 2.0, 1.5, 4.0}),
    /** Temperley, Music and Probability, 2007, table 6.1: counted in the Kostka-Payne corpus. */
    KOSTKA_PAYNE(
            new double[] {.748, .060, .488, .082, .670, .460, .096, .715, .104, .366, .057, .400},
            new double[] {.712, .084, .474, .618, .049, .460, .105, .747, .404, .067, .133, .330});

    private final double[] major;
    private final double[] minor;

    KeyProfile(double[] major, double[] minor) {
        this.major = major;
        this.minor = minor;
    }

    /** Pearson's correlation of the weights with the profile of a key, -1 to 1; 0 where all weights are equal. */
    public double correlation(PitchWeights weights, int tonic, boolean inMinor) {
        var profile = inMinor ? minor : major;
        double meanWeight = weights.total() / 12;
        double meanProfile = mean(profile);
        double both = 0;
        double squaredWeights = 0;
        double squaredProfile = 0;
        for (int i = 0; i < 12; i++) {
            double weight = weights.of(tonic + i) - meanWeight;
            double fit = profile[i] - meanProfile;
            both += weight * fit;
            squaredWeights += weight * weight;
            squaredProfile += fit * fit;
        }
        return squaredWeights == 0 ? 0 : both / StrictMath.sqrt(squaredWeights * squaredProfile);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
