package groundbass.linetext.edit;

import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.Event.Played;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Exchanges one way of striking for another in some bars, each word where it is typed. Other bars that took these over are
 * written out first, so that they sound as before.
 */
final class TechniqueEdits {
    private final IndexedText text;
    private final int first;
    private final int last;
    private final Technique from;
    private final Technique to;
    private final BarEdits bars;

    /** @param first, last places of bars in the text, from 0 */
    TechniqueEdits(IndexedText text, int first, int last, Technique from, Technique to) {
        this.text = text;
        this.first = first;
        this.last = last;
        this.from = from;
        this.to = to;
        this.bars = new BarEdits(text);
    }

    /** Empty where nothing in these bars is said to be struck so. */
    List<Splice> splices() {
        var exchanged = IntStream.rangeClosed(first, last)
                .mapToObj(index -> text.bars().get(index).counts)
                .flatMap(List::stream)
                .map(CountLine::events)
                .flatMap(List::stream)
                .flatMap(event -> exchanged(event).stream())
                .toList();
        if (exchanged.isEmpty()) {
            return List.of();
        }
        var splices = new ArrayList<>(exchanged);
        IntStream.range(0, text.bars().size())
                .filter(index -> index < first || index > last)
                .filter(this::takesOver)
                .forEach(index -> splices.add(bars.writtenOut(index, bars.typed(index))));
        return splices;
    }

    private boolean takesOver(int index) {
        return IntStream.rangeClosed(first, last).anyMatch(inside -> bars.copies(index, bars.typed(inside)));
    }

    private List<Splice> exchanged(Event event) {
        boolean struck = event.items().stream().anyMatch(this::isStruckSo);
        return struck ? words(text.start(event.span()), text.end(event.span())) : List.of();
    }

    private boolean isStruckSo(Event.Item item) {
        return item instanceof Played played
                && played.words().pluck().filter(from::equals).isPresent();
    }

    /** The word where it stands alone; what is quoted are words of the educator's. */
    private List<Splice> words(int start, int end) {
        var word = Pattern.compile("\"[^\"]*\"|(?<![^\\s+])" + Pattern.quote(from.word()) + "(?![^\\s+])");
        var found = word.matcher(text.all().substring(start, end));
        var splices = new ArrayList<Splice>();
        while (found.find()) {
            if (!found.group().startsWith("\"")) {
                splices.add(new Splice(start + found.start(), start + found.end(), to.word()));
            }
        }
        return splices;
    }
}
