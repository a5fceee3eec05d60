package groundbass.web.view;

/**
 * One page of a long list, as its address tells it: {@code ?page=2}; the first page has the bare address.
 *
 * @param path the address of the list, with what else its query says
 * @param number counted from 1
 * @param size how many entries a page has
 */
public record PageOf(String path, int number, int size) {
    /** So that nobody overflows a number by asking for a page that cannot be. */
    private static final int HIGHEST = 1_000_000;

    public PageOf {
        if (number < 1 || number > HIGHEST || size < 1) {
            throw new IllegalArgumentException("no page " + number + " of " + size);
        }
    }

    /** Whether a number from outside can be that of a page. */
    public static boolean canBe(int number) {
        return number >= 1 && number <= HIGHEST;
    }

    /** How many entries stand on the pages before. */
    public int skipped() {
        return (number - 1) * size;
    }

    /** Where to turn to, for a list of which there are so many entries. */
    public Turning turning(int entries) {
        return turning(entries > skipped() + size);
    }

    /** Where to turn to, where only this is known: whether something follows. */
    public Turning turning(boolean more) {
        return new Turning(number > 1 ? at(number - 1) : "", more ? at(number + 1) : "", number);
    }

    private String at(int page) {
        return page == 1 ? path : path + (path.contains("?") ? "&" : "?") + "page=" + page;
    }

    /**
     * The pages beside one.
     *
     * @param previous the address of the page before, empty on the first
     * @param next the address of the page after, empty on the last
     */
    public record Turning(String previous, String next, int number) {
        /** Whether the whole list is on one page, so that nothing need be shown. */
        public boolean isAll() {
            return previous.isEmpty() && next.isEmpty();
        }
    }
}
