package groundbass.remark;

import java.util.ArrayList;
import java.util.List;

/** A text cut into lines, and the name it goes by in reports; empty where it has none. */
public final class Source {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final String name;
    private final List<String> lines;

    private Source(String name, List<String> lines) {
        this.name = name;
        this.lines = lines;
    }

    /** Lines end with LF, CR LF or CR; a byte order mark at the start is not part of the text. */
    public static Source of(String name, String text) {
        var lines = new ArrayList<String>();
        int start = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
        for (int i = start; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r') {
                lines.add(text.substring(start, i));
                boolean pair = c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n';
                i += pair ? 1 : 0;
                start = i + 1;
            }
        }
        lines.add(text.substring(start));
        return new Source(name, List.copyOf(lines));
    }

    public String name() {
        return name;
    }

    public List<String> lines() {
        return lines;
    }

    /** @param number from 1; empty past the end */
    public String line(int number) {
        return number <= lines.size() ? lines.get(number - 1) : "";
    }
}
