package groundbass.plaintab;

import java.util.ArrayList;
import java.util.List;

/** A row of words over or under the strings; what is wider than a row goes on in the next. */
final class Fitted {
    private Fitted() {}

    static List<String> rows(TabRow row) {
        if (row.isEmpty()) {
            return List.of();
        }
        var rows = new ArrayList<String>();
        String left = row.toString();
        while (left.length() > PlainTab.WIDTH) {
            int cut = left.lastIndexOf(' ', PlainTab.WIDTH);
            int end = cut > left.length() - left.stripLeading().length() ? cut : PlainTab.WIDTH;
            rows.add(left.substring(0, end));
            left = left.substring(end).strip();
        }
        rows.add(left);
        return rows;
    }
}
