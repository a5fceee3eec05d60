package groundbass.script.lexicon;

import java.util.Map;

/**
 * A word with all that it may be.
 *
 * @param raw as it stands
 * @param from offset of its first character
 * @param to offset after its last
 */
public record SpokenWord(Map<Category, String> categories, String raw, int from, int to) {
    public static final SpokenWord NOTHING = new SpokenWord(Map.of(), "", 0, 0);

    public boolean is(Category category) {
        return categories.containsKey(category);
    }

    public boolean isAny(Category... some) {
        for (var category : some) {
            if (is(category)) {
                return true;
            }
        }
        return false;
    }

    public String value(Category category) {
        return categories.get(category);
    }

    public int number(Category category) {
        return Integer.parseInt(value(category));
    }

    public boolean isKnown() {
        return !categories.isEmpty();
    }

    public boolean isCapital() {
        return !raw.isEmpty() && Character.isUpperCase(raw.charAt(0));
    }
}
