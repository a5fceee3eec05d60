package groundbass.linetext.edit;

import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.linetext.source.Splice;
import groundbass.remark.Remark;
import groundbass.remark.Retyping;
import groundbass.score.Count;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Ways to mend what is wrong with a text. Each was tried: with it done, the text has fewer problems. */
public final class Fixes {
    private static final int MOST = 3;

    private final String text;
    private final int problems;

    /**
     * A way to mend something.
     *
     * @param label what would stand there
     */
    public record Fix(Message label, List<Splice> splices) {
        public Fix {
            splices = List.copyOf(splices);
        }
    }

    /** @param reading of this very text */
    public Fixes(String text, Reading reading) {
        this.text = text;
        this.problems = reading.problems().size();
    }

    /** The likeliest first; often none. */
    public List<Fix> of(Remark problem) {
        var manuscript = new IndexedText(text);
        var silences = problem.code().equals("beat-unsaid") ? silences(manuscript, problem) : Stream.<Fix>empty();
        return Stream.concat(suggested(manuscript, problem), silences)
                .filter(this::helps)
                .limit(MOST)
                .toList();
    }

    private boolean helps(Fix fix) {
        return !fix.splices().isEmpty()
                && LineText.read(Splice.apply(text, fix.splices())).problems().size() < problems;
    }

    /** A suggestion stands for what was found, or for the last part of it: 5 for the 58 of E58. */
    private Stream<Fix> suggested(IndexedText manuscript, Remark problem) {
        String found = manuscript.text(problem.span());
        String head = found.replaceFirst("\\d+$", "");
        return problem.suggestions().stream()
                .flatMap(suggestion -> suggestion instanceof Retyping typed ? Stream.of(typed) : Stream.empty())
                .flatMap(typed -> Stream.of(typed, Retyping.of(head + typed.text())))
                .distinct()
                .filter(typed -> !typed.text().equals(found))
                .map(typed -> new Fix(typed.label(), List.of(manuscript.replace(problem.span(), typed.text()))));
    }

    /** A beat that was forgotten is silent, or the sound goes on. */
    private Stream<Fix> silences(IndexedText manuscript, Remark problem) {
        return bar(manuscript, problem.span().line()).stream().flatMap(index -> unsaid(manuscript, index)
                .flatMap(at -> Stream.of("rest", "hold").map(what -> silence(manuscript, index, at, what))));
    }

    private Fix silence(IndexedText manuscript, int index, Count at, String what) {
        var splices = new CountEdits(manuscript, index).events(at, what);
        return new Fix(Message.of("remark.typed", at + "  " + what), splices);
    }

    private static Stream<Count> unsaid(IndexedText manuscript, int index) {
        var meter = manuscript.inForce(index).meter();
        var said = manuscript.stretches(index);
        return meter.beatStarts().stream()
                .filter(start ->
                        said.stream().noneMatch(stretch -> stretch.span().contains(start)))
                .flatMap(start -> Count.at(start, meter).stream())
                .limit(1);
    }

    private static Optional<Integer> bar(IndexedText manuscript, int line) {
        int found = -1;
        for (int i = 0; i < manuscript.bars().size(); i++) {
            found = manuscript.bars().get(i).head.span().line() <= line ? i : found;
        }
        return found < 0 ? Optional.empty() : Optional.of(found);
    }
}
