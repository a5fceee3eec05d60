package groundbass.plaintab;

import java.util.ArrayList;
import java.util.List;

/** Text in rows of a greatest width, broken at spaces, and inside a word only where that is wider than a row. */
final class Wrapped {
    private Wrapped() {}

    static List<String> rows(String text, int width) {
        var rows = new ArrayList<String>();
        var row = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (row.length() > 0 && row.length() + 1 + word.length() > width) {
                rows.add(row.toString());
                row.setLength(0);
            }
            row.append(row.length() == 0 ? "" : " ").append(word);
            while (row.length() > width) {
                rows.add(row.substring(0, width));
                row.delete(0, width);
            }
        }
        rows.add(row.toString());
        return rows;
    }
}
