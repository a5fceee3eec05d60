package groundbass.walkthrough;

/** How a bar follows from one that was told before. */
sealed interface Earlier {
    /** The number of the bar that was told. */
    int number();

    /** The same, of a bar so many bars later. */
    Earlier later(int bars);

    /** The same notes at the same places. */
    record Same(int number) implements Earlier {
        @Override
        public Earlier later(int bars) {
            return new Same(number + bars);
        }
    }

    /**
     * The same strokes and the same shape elsewhere on the neck.
     *
     * @param strings by how many strings higher; negative where lower
     * @param frets   by how many frets further up; negative where down
     * @param octaves by how many octaves higher it sounds; 0 where the distance is no octave
     */
    record Moved(int number, int strings, int frets, int octaves) implements Earlier {
        @Override
        public Earlier later(int bars) {
            return new Moved(number + bars, strings, frets, octaves);
        }
    }
}
