package groundbass.sound.string;

/**
 * One of the two planes in which a string swings. It is stopped and held otherwise in each, and so falls and sounds a
 * little differently: what is heard falls quickly at first and slowly later, and its partials beat against one another,
 * too slowly to be told (two polarisations after Karjalainen, Valimaki and Tolonen 1998, from memory; rule:
 * decay-of-strings). How much of each is by trial, no source.
 *
 * @param share how much of it the pickup hears
 * @param cents by which it sounds above the string's pitch
 * @param sustain of the string's own decay
 * @param neck whether it swings towards the neck, and so meets frets and is heard to be touched
 */
record Plane(double share, double cents, double sustain, boolean neck) {
    /** To the neck and away from it, where the pickup listens. */
    static final Plane UPRIGHT = new Plane(1, -0.25, 0.82, true);

    /** Along the frets. */
    static final Plane ACROSS = new Plane(0.2, 0.6, 1.3, false);

    /** By what a pitch is multiplied. */
    double tuning() {
        return StrictMath.pow(2, cents / 1200);
    }
}
