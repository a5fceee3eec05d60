package groundbass.web.desk.line;

import groundbass.linetext.source.Splice;
import groundbass.remark.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Where lines and columns of a text lie when it is counted in characters from its start, lines ending with LF. */
record TextPlaces(List<Integer> starts) {
    private static final Pattern PLACE = Pattern.compile("s\\d+(f\\d+|x)|[A-G][#b]*(\\d+|x)");

    TextPlaces {
        starts = List.copyOf(starts);
    }

    static TextPlaces of(String text) {
        var starts = new ArrayList<Integer>(List.of(0));
        for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) {
            starts.add(end + 1);
        }
        return new TextPlaces(starts);
    }

    int from(Span span) {
        return starts.get(span.line() - 1) + span.column() - 1;
    }

    Splice splice(Span span, String instead) {
        return new Splice(from(span), from(span) + span.length(), instead);
    }

    /** Whether this is a place as it is typed; a copied note stands where the copy is ordered, and there it is not. */
    static boolean isPlace(String typed) {
        return PLACE.matcher(typed).matches();
    }
}
