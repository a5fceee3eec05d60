package groundbass.walkthrough.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The sentences of one step: where it is, what is to be known before one plays, what is played, and what to mind.
 *
 * @param where  the bar or beats, what stands there, and a rhythm
 * @param before whole sentences
 * @param how    the first beats and their rhythm, where something is to be known of the whole bar
 * @param played without its full stop
 * @param after  whole sentences
 */
public record StepText(List<String> where, List<String> before, List<String> how, String played, List<String> after) {
    public StepText {
        where = List.copyOf(where);
        before = List.copyOf(before);
        how = List.copyOf(how);
        after = List.copyOf(after);
    }

    /** A step that is one sentence. */
    public static StepText plain(List<String> where, String played) {
        return new StepText(where, List.of(), List.of(), played, List.of());
    }

    /** What is played in one sentence with where it is, unless something is to be known before. */
    public String said(Wording words) {
        var sentences = new ArrayList<String>();
        if (before.isEmpty()) {
            sentences.add(sentence(Stream.concat(where.stream(), how.stream()).toList(), words));
        } else {
            sentences.add(words.say("sentence", heading(where, words)));
            sentences.addAll(before);
            sentences.add(sentence(how, words));
        }
        sentences.addAll(after);
        return sentences.stream().map(UnderHeading::capital).collect(Collectors.joining(" "));
    }

    private String sentence(List<String> lead, Wording words) {
        return lead.isEmpty() ? words.say("sentence", played) : words.say("step", heading(lead, words), played);
    }

    private static String heading(List<String> parts, Wording words) {
        return parts.stream()
                .reduce((one, two) -> words.say("heading", one, two))
                .orElseThrow();
    }
}
