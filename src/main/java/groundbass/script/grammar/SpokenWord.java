package groundbass.script.grammar;

import java.util.Map;

/**
 * A word with all that it may be.
 *
 * @param raw as it stands
 * @param from offset of its first character
 * @param to offset after its last
 */
record SpokenWord(Map<Category, String> categories, String raw, int from, int to) {
    static final SpokenWord NOTHING = new SpokenWord(Map.of(), "", 0, 0);

    boolean is(Category category) {
        return categories.containsKey(category);
    }

    boolean isAny(Category... some) {
        for (var category : some) {
            if (is(category)) {
                return true;
            }
        }
        return false;
    }

    String value(Category category) {
        return categories.get(category);
    }

    int number(Category category) {
        return Integer.parseInt(value(category));
    }

    boolean isKnown() {
        return !categories.isEmpty();
    }

    boolean isCapital() {
        return !raw.isEmpty() && Character.isUpperCase(raw.charAt(0));
    }
}
