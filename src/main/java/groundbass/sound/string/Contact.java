package groundbass.sound.string;

/**
 * Something that a swinging string meets at one place. A wave and its reflection, {@code a} and {@code b}, pass there;
 * {@code y = a - b} is how far the string stands off. What goes too far is turned back: {@code share} 1 reflects all of
 * it, as a fret does, 1/2 takes most out of it, as a finger does (conditional reflection after Rank and Kubin 1997).
 *
 * @param place from the bridge, in samples of travel there and back
 * @param gap how far the string may go towards it; negative infinity for a finger, which holds both ways
 * @param samples how long it is there
 */
record Contact(double place, double gap, double share, long samples) {
    private static final double BOTH_WAYS = Double.NEGATIVE_INFINITY;

    static Contact fret(double place, double gap, double share, long samples) {
        return new Contact(place, gap, share, samples);
    }

    static Contact finger(double place, double share, long samples) {
        return new Contact(place, BOTH_WAYS, share, samples);
    }

    /** How much is to be taken off {@code b} and put onto {@code a}. */
    double push(double y) {
        if (gap == BOTH_WAYS) {
            return -y * share;
        }
        return y < -gap ? (-gap - y) * share : 0;
    }
}
