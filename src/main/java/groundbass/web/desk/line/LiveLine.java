package groundbass.web.desk.line;

import groundbass.linetext.source.Splice;
import java.util.List;

/**
 * What a line's text comes to while it is typed, for the page's script: the sheet system by system, what is typed at each
 * count, and what is wrong. Places in the text are UTF-16 units from its start, as the browser counts them.
 *
 * @param undrawn why the sheet is not drawn, as a sentence; empty where it is
 */
record LiveLine(
        String undrawn,
        List<SystemView> systems,
        List<BarView> bars,
        List<SettingView> settings,
        List<RemarkSpot> remarks,
        NeckView neck,
        List<String> walk) {

    /** A line of which nothing is shown, and why. */
    static LiveLine undrawn(String why) {
        return new LiveLine(why, List.of(), List.of(), List.of(), List.of(), new NeckView(0, List.of()), List.of());
    }

    /** The same line, with what is to be said of it. */
    LiveLine with(List<RemarkSpot> found) {
        return new LiveLine(undrawn, systems, bars, settings, found, neck, walk);
    }

    /** What follows a line that was sent as soon as it was drawn. */
    record Remarks(List<RemarkSpot> remarks) {}

    /**
     * @param key the same for the same drawing; the page says which it has
     * @param svg empty where it has this one
     * @param first, last numbers of its bars
     */
    record SystemView(String key, String svg, int first, int last) {}

    /**
     * @param system the index of the system that shows it
     * @param left, right its edges as parts of the system's width, 0 to 1
     * @param taken what it takes over, as typed; empty where it is on its own
     * @param copied the number of the bar that it takes over; -1 for none
     * @param counts how many counts the bar has, and {@code unit} the lower figure of its meter
     */
    record BarView(
            int number,
            int system,
            double left,
            double right,
            int line,
            boolean headed,
            String chords,
            String taken,
            int copied,
            int counts,
            int unit,
            List<ColumnView> columns) {}

    /**
     * A count line.
     *
     * @param label its counts as typed, {@code at} the first of them
     * @param x where it sounds, a part of the system's width
     * @param from, to where its events stand in the text; both -1 for one that only the copied bar says
     */
    record ColumnView(String label, String at, double x, String events, int from, int to, int line) {}

    record SettingView(String name, String value) {}

    /**
     * Something that is wrong, or worth a look.
     *
     * @param weight {@code error impossible unwise look}
     * @param name how grave it is, in words
     * @param bar its number; -1 where it belongs to none
     * @param at the count in that bar; empty where it is the whole
     * @param x where that lies, a part of the system's width; negative where it is the whole bar
     */
    record RemarkSpot(
            String weight,
            String name,
            String sentence,
            String language,
            int line,
            int from,
            int to,
            int bar,
            String at,
            double x,
            List<FixView> fixes) {}

    record FixView(String label, List<Splice> splices) {
        FixView {
            splices = Splice.inOrder(splices);
        }
    }

    /** The strings from the highest; each with the names of its notes from the open string on. */
    record NeckView(int frets, List<StringView> strings) {}

    record StringView(String name, List<String> notes) {}
}
